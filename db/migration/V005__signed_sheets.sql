-- What was signed. The server may add rows and read them; it may not change or remove one.

CREATE TABLE signed_sheet (
    tenant_id         uuid NOT NULL,
    id                uuid NOT NULL,
    sheet_id          uuid NOT NULL,
    version_no        integer NOT NULL CHECK (version_no >= 1),
    content           text NOT NULL,
    content_hash      text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    signer_id         uuid NOT NULL,
    signer_name       text NOT NULL,
    signer_role       text NOT NULL,
    meaning           text NOT NULL,
    signed_at         timestamptz NOT NULL,
    signed_zone       text NOT NULL,
    received_at       timestamptz NOT NULL,
    -- Facts of the case as signed, repeated here so that counting never reads a draft.
    programme_id      uuid NOT NULL,
    site_id           uuid NOT NULL,
    case_id           uuid NOT NULL,
    case_ended_at     timestamptz NOT NULL,
    trainee_id        uuid NOT NULL,
    rubric_version_id uuid NOT NULL,
    procedure_code    text NOT NULL,
    band              text NOT NULL,
    confirmed_part    text NOT NULL,
    given_supervision text NOT NULL,
    verdict           text NOT NULL,
    late              boolean NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, sheet_id, version_no),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, rubric_version_id) REFERENCES rubric_version (tenant_id, id)
);
CREATE INDEX signed_sheet_trainee ON signed_sheet (tenant_id, trainee_id, procedure_code, case_ended_at);
CREATE INDEX signed_sheet_signer ON signed_sheet (tenant_id, signer_id, signed_at);
CREATE INDEX signed_sheet_programme ON signed_sheet (tenant_id, programme_id, procedure_code, case_ended_at);
SELECT wall_off('signed_sheet');
GRANT SELECT, INSERT ON signed_sheet TO ${runtimeRole};

CREATE TABLE signed_step (
    tenant_id       uuid NOT NULL,
    signed_sheet_id uuid NOT NULL,
    step_code       text NOT NULL,
    critical        boolean NOT NULL,
    state           text NOT NULL CHECK (state IN ('SCORED', 'BY_SUPERVISOR', 'NOT_PART', 'NOT_SEEN')),
    level           integer CHECK (level BETWEEN 1 AND 5),
    cause           text CHECK (cause IN ('PLAN', 'AFTER_TAKEOVER')),
    PRIMARY KEY (tenant_id, signed_sheet_id, step_code),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id),
    CHECK ((state = 'SCORED') = (level IS NOT NULL)),
    CHECK ((state = 'BY_SUPERVISOR') = (cause IS NOT NULL))
);
SELECT wall_off('signed_step');
GRANT SELECT, INSERT ON signed_step TO ${runtimeRole};

CREATE TABLE signed_event (
    tenant_id       uuid NOT NULL,
    signed_sheet_id uuid NOT NULL,
    ordinal         integer NOT NULL,
    event_code      text NOT NULL,
    step_code       text,
    reason          text,
    blocking        boolean NOT NULL,
    PRIMARY KEY (tenant_id, signed_sheet_id, ordinal),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id)
);
SELECT wall_off('signed_event');
GRANT SELECT, INSERT ON signed_event TO ${runtimeRole};
