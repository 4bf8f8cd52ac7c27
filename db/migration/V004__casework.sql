-- A case, who operated, how hard it was, and the score sheets about it (still drafts here; signing copies them away).

CREATE TABLE surgical_case (
    tenant_id           uuid NOT NULL REFERENCES organisation (tenant_id),
    id                  uuid NOT NULL,
    programme_id        uuid NOT NULL,
    site_id             uuid NOT NULL,
    reference           text NOT NULL,
    kind                text NOT NULL CHECK (kind IN ('OPERATION', 'REFERENCE')),
    procedure_code      text NOT NULL,
    eye                 text NOT NULL CHECK (eye IN ('RIGHT', 'LEFT')),
    state               text NOT NULL CHECK (state IN ('PLANNED', 'STARTED', 'ENDED', 'ABANDONED')),
    planned_supervision text NOT NULL CHECK (planned_supervision IN ('SCRUBBED', 'IN_ROOM', 'NEARBY')),
    band                text NOT NULL CHECK (band IN ('A', 'B', 'C', 'D')),
    complexity_set_at   timestamptz NOT NULL,
    complexity_set_late boolean NOT NULL,
    ended_at            timestamptz,
    ended_zone          text,
    converted_to        text,
    abandoned_reason    text,
    second_eye_of       uuid,
    -- Who will be asked to score a planned case; the sheet is opened when the case has ended.
    planned_scorer_id   uuid,
    logged_by           uuid NOT NULL,
    logged_at           timestamptz NOT NULL,
    lock_version        integer NOT NULL DEFAULT 0,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, programme_id, reference),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, site_id) REFERENCES site (tenant_id, id),
    FOREIGN KEY (tenant_id, logged_by) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, second_eye_of) REFERENCES surgical_case (tenant_id, id),
    FOREIGN KEY (tenant_id, planned_scorer_id) REFERENCES person (tenant_id, id),
    CHECK (state <> 'PLANNED' OR planned_scorer_id IS NOT NULL),
    CHECK (state <> 'ENDED' OR (ended_at IS NOT NULL AND ended_zone IS NOT NULL)),
    CHECK (state <> 'ABANDONED' OR abandoned_reason IS NOT NULL)
);
SELECT wall_off('surgical_case');
GRANT SELECT, INSERT, UPDATE ON surgical_case TO ${runtimeRole};

CREATE TABLE case_complexity (
    tenant_id   uuid NOT NULL,
    case_id     uuid NOT NULL,
    factor_code text NOT NULL,
    PRIMARY KEY (tenant_id, case_id, factor_code),
    FOREIGN KEY (tenant_id, case_id) REFERENCES surgical_case (tenant_id, id)
);
SELECT wall_off('case_complexity');
GRANT SELECT, INSERT, DELETE ON case_complexity TO ${runtimeRole};

-- Two trainees may share a case; each has an own sheet with own steps. The part is a claim until a supervisor confirms it.
CREATE TABLE case_trainee (
    tenant_id    uuid NOT NULL,
    case_id      uuid NOT NULL,
    trainee_id   uuid NOT NULL,
    claimed_part text NOT NULL CHECK (claimed_part IN ('WHOLE_CASE', 'PARTS', 'ASSISTED')),
    PRIMARY KEY (tenant_id, case_id, trainee_id),
    FOREIGN KEY (tenant_id, case_id) REFERENCES surgical_case (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX case_trainee_trainee ON case_trainee (tenant_id, trainee_id);
SELECT wall_off('case_trainee');
GRANT SELECT, INSERT ON case_trainee TO ${runtimeRole};

-- What the trainee thought of the own steps, before reading the supervisor's levels.
CREATE TABLE self_score (
    tenant_id   uuid NOT NULL,
    case_id     uuid NOT NULL,
    trainee_id  uuid NOT NULL,
    step_code   text NOT NULL,
    level       integer NOT NULL CHECK (level BETWEEN 1 AND 5),
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, case_id, trainee_id, step_code),
    FOREIGN KEY (tenant_id, case_id, trainee_id) REFERENCES case_trainee (tenant_id, case_id, trainee_id)
);
SELECT wall_off('self_score');
GRANT SELECT, INSERT, UPDATE (level, recorded_at), DELETE ON self_score TO ${runtimeRole};

CREATE TABLE score_sheet (
    tenant_id         uuid NOT NULL,
    id                uuid NOT NULL,
    case_id           uuid NOT NULL,
    trainee_id        uuid NOT NULL,
    scorer_id         uuid NOT NULL,
    rubric_version_id uuid NOT NULL,
    state             text NOT NULL CHECK (state IN ('OPEN', 'SIGNED', 'VOID')),
    confirmed_part    text CHECK (confirmed_part IN ('WHOLE_CASE', 'PARTS', 'ASSISTED')),
    given_supervision text CHECK (given_supervision IN ('SCRUBBED', 'IN_ROOM', 'NEARBY')),
    strength          text,
    next_step         text,
    opened_at         timestamptz NOT NULL,
    first_scored_at   timestamptz,
    lock_version      integer NOT NULL DEFAULT 0,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, case_id, trainee_id, scorer_id),
    FOREIGN KEY (tenant_id, case_id, trainee_id) REFERENCES case_trainee (tenant_id, case_id, trainee_id),
    FOREIGN KEY (tenant_id, scorer_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, rubric_version_id) REFERENCES rubric_version (tenant_id, id),
    CHECK (trainee_id <> scorer_id)
);
CREATE INDEX score_sheet_scorer ON score_sheet (tenant_id, scorer_id, state);
SELECT wall_off('score_sheet');
GRANT SELECT, INSERT, UPDATE ON score_sheet TO ${runtimeRole};

-- A sheet handed to another supervisor: who gave it, to whom, why.
CREATE TABLE sheet_assignment (
    tenant_id   uuid NOT NULL,
    id          uuid NOT NULL,
    sheet_id    uuid NOT NULL,
    from_id     uuid NOT NULL,
    to_id       uuid NOT NULL,
    assigned_by uuid NOT NULL,
    reason      text NOT NULL,
    assigned_at timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, from_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, to_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, assigned_by) REFERENCES person (tenant_id, id)
);
SELECT wall_off('sheet_assignment');
GRANT SELECT, INSERT ON sheet_assignment TO ${runtimeRole};

-- A blank step has no row. Only a scored step carries a level.
CREATE TABLE sheet_step (
    tenant_id   uuid NOT NULL,
    sheet_id    uuid NOT NULL,
    step_code   text NOT NULL,
    state       text NOT NULL CHECK (state IN ('SCORED', 'BY_SUPERVISOR', 'NOT_PART', 'NOT_SEEN')),
    level       integer CHECK (level BETWEEN 1 AND 5),
    cause       text CHECK (cause IN ('PLAN', 'AFTER_TAKEOVER')),
    recorded_at timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, sheet_id, step_code),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    CHECK ((state = 'SCORED') = (level IS NOT NULL)),
    CHECK ((state = 'BY_SUPERVISOR') = (cause IS NOT NULL))
);
SELECT wall_off('sheet_step');
GRANT SELECT, INSERT, UPDATE, DELETE ON sheet_step TO ${runtimeRole};

CREATE TABLE sheet_measure (
    tenant_id    uuid NOT NULL,
    sheet_id     uuid NOT NULL,
    step_code    text NOT NULL,
    measure_code text NOT NULL,
    value        numeric(10, 3) NOT NULL,
    recorded_at  timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, sheet_id, step_code, measure_code),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id)
);
SELECT wall_off('sheet_measure');
GRANT SELECT, INSERT, UPDATE, DELETE ON sheet_measure TO ${runtimeRole};

CREATE TABLE sheet_event (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    sheet_id     uuid NOT NULL,
    event_code   text NOT NULL,
    step_code    text,
    reason       text CHECK (reason IN ('TEACHING', 'TIME', 'SAFETY')),
    action_taken text,
    recorded_at  timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id)
);
SELECT wall_off('sheet_event');
GRANT SELECT, INSERT, DELETE ON sheet_event TO ${runtimeRole};

-- A tap that was applied, by the id the page gave it: sending it again after a lost answer changes nothing.
CREATE TABLE sheet_tap (
    tenant_id    uuid NOT NULL,
    sheet_id     uuid NOT NULL,
    tap_id       uuid NOT NULL,
    lock_version integer NOT NULL,
    recorded_at  timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, sheet_id, tap_id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id)
);
SELECT wall_off('sheet_tap');
GRANT SELECT, INSERT ON sheet_tap TO ${runtimeRole};

-- The trainee's answer to a signed sheet. Written once, read for ever.
CREATE TABLE sheet_remark (
    tenant_id  uuid NOT NULL,
    id         uuid NOT NULL,
    sheet_id   uuid NOT NULL,
    author_id  uuid NOT NULL,
    body       text NOT NULL,
    written_at timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, author_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('sheet_remark');
GRANT SELECT, INSERT ON sheet_remark TO ${runtimeRole};
