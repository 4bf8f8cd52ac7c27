-- Recorded operations that every supervisor of a programme scores, to see whether they score alike. They are about no
-- trainee and no patient; nothing that counts cases, sheets or experience reads these tables.
CREATE TABLE reference_case (
    tenant_id         uuid NOT NULL,
    id                uuid NOT NULL,
    programme_id      uuid NOT NULL,
    reference         text NOT NULL CHECK (reference <> ''),
    title             text NOT NULL CHECK (title <> ''),
    rubric_version_id uuid NOT NULL,
    band              text NOT NULL CHECK (band IN ('A', 'B', 'C', 'D')),
    -- Where the film is to be found, in words; nothing opens it.
    film              text NOT NULL CHECK (film <> ''),
    closes_on         date NOT NULL,
    added_by          uuid NOT NULL,
    added_at          timestamptz NOT NULL,
    -- Closed before its day.
    closed_by         uuid,
    closed_at         timestamptz,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, programme_id, reference),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, rubric_version_id) REFERENCES rubric_version (tenant_id, id),
    FOREIGN KEY (tenant_id, added_by) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, closed_by) REFERENCES person (tenant_id, id),
    CHECK ((closed_by IS NULL) = (closed_at IS NULL))
);
SELECT wall_off('reference_case');
GRANT SELECT, INSERT, UPDATE (closed_by, closed_at) ON reference_case TO ${runtimeRole};

-- What one supervisor said about one of them; once, and never changed.
CREATE TABLE reference_scoring (
    tenant_id         uuid NOT NULL,
    id                uuid NOT NULL,
    reference_case_id uuid NOT NULL,
    scorer_id         uuid NOT NULL,
    scorer_name       text NOT NULL,
    scored_at         timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, reference_case_id, scorer_id),
    FOREIGN KEY (tenant_id, reference_case_id) REFERENCES reference_case (tenant_id, id),
    FOREIGN KEY (tenant_id, scorer_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('reference_scoring');
GRANT SELECT, INSERT ON reference_scoring TO ${runtimeRole};

CREATE TABLE reference_step (
    tenant_id            uuid NOT NULL,
    reference_scoring_id uuid NOT NULL,
    step_code            text NOT NULL,
    -- Nothing for a step that was not seen.
    level                smallint CHECK (level BETWEEN 1 AND 5),
    PRIMARY KEY (tenant_id, reference_scoring_id, step_code),
    FOREIGN KEY (tenant_id, reference_scoring_id) REFERENCES reference_scoring (tenant_id, id)
);
SELECT wall_off('reference_step');
GRANT SELECT, INSERT ON reference_step TO ${runtimeRole};
