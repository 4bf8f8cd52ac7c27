-- Experts say whether the steps of a rubric are the right ones. All of it is evidence and added once.

CREATE TABLE rubric_round (
    tenant_id      uuid NOT NULL,
    id             uuid NOT NULL,
    -- The steps as they were asked about: the canonical rubric and its hash.
    content        text NOT NULL,
    content_hash   text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    keep_percent   integer NOT NULL CHECK (keep_percent BETWEEN 50 AND 100),
    opened_by      uuid NOT NULL,
    opened_name    text NOT NULL,
    opened_at      timestamptz NOT NULL,
    closes_at      timestamptz NOT NULL,
    zone           text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, opened_by) REFERENCES person (tenant_id, id),
    CHECK (closes_at > opened_at)
);
SELECT wall_off('rubric_round');
GRANT SELECT, INSERT ON rubric_round TO ${runtimeRole};

CREATE TABLE rubric_expert (
    tenant_id uuid NOT NULL,
    round_id  uuid NOT NULL,
    person_id uuid NOT NULL,
    PRIMARY KEY (tenant_id, round_id, person_id),
    FOREIGN KEY (tenant_id, round_id) REFERENCES rubric_round (tenant_id, id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('rubric_expert');
GRANT SELECT, INSERT ON rubric_expert TO ${runtimeRole};

-- One answer an expert and round.
CREATE TABLE rubric_rating (
    tenant_id uuid NOT NULL,
    id        uuid NOT NULL,
    round_id  uuid NOT NULL,
    expert_id uuid NOT NULL,
    rated_at  timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, round_id, expert_id),
    FOREIGN KEY (tenant_id, round_id, expert_id) REFERENCES rubric_expert (tenant_id, round_id, person_id),
    FOREIGN KEY (tenant_id, expert_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('rubric_rating');
GRANT SELECT, INSERT ON rubric_rating TO ${runtimeRole};

CREATE TABLE rubric_step_rating (
    tenant_id uuid NOT NULL,
    rating_id uuid NOT NULL,
    step_code text NOT NULL,
    relevance smallint NOT NULL CHECK (relevance BETWEEN 1 AND 4),
    remark    text NOT NULL,
    PRIMARY KEY (tenant_id, rating_id, step_code),
    FOREIGN KEY (tenant_id, rating_id) REFERENCES rubric_rating (tenant_id, id)
);
SELECT wall_off('rubric_step_rating');
GRANT SELECT, INSERT ON rubric_step_rating TO ${runtimeRole};
