-- Changing a rubric: a draft, what a second person says about it, and from when on a version is in use.

-- One open draft a procedure, kept by the organisation. It is nobody's evidence; the published version is.
CREATE TABLE rubric_draft (
    tenant_id      uuid NOT NULL,
    id             uuid NOT NULL,
    procedure_code text NOT NULL,
    source         text NOT NULL,
    lock_no        integer NOT NULL CHECK (lock_no >= 1),
    -- Everyone who ever saved it; none of them can review it.
    authors        uuid[] NOT NULL,
    begun_by       uuid NOT NULL,
    begun_at       timestamptz NOT NULL,
    saved_by       uuid NOT NULL,
    saved_at       timestamptz NOT NULL,
    ended_at       timestamptz,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, begun_by) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, saved_by) REFERENCES person (tenant_id, id)
);
CREATE UNIQUE INDEX rubric_draft_open ON rubric_draft (tenant_id, procedure_code) WHERE ended_at IS NULL;
SELECT wall_off('rubric_draft');
GRANT SELECT, INSERT, UPDATE (source, lock_no, authors, saved_by, saved_at, ended_at) ON rubric_draft TO ${runtimeRole};

-- What a second person said about a text of a draft, bound to that text and to what it says.
CREATE TABLE rubric_review (
    tenant_id      uuid NOT NULL,
    id             uuid NOT NULL,
    draft_id       uuid NOT NULL,
    source_hash    text NOT NULL CHECK (source_hash ~ '^[0-9a-f]{64}$'),
    content_hash   text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    agrees         boolean NOT NULL,
    words          text NOT NULL CHECK (words <> ''),
    reviewer_id    uuid NOT NULL,
    reviewer_name  text NOT NULL,
    reviewed_at    timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, draft_id) REFERENCES rubric_draft (tenant_id, id),
    FOREIGN KEY (tenant_id, reviewer_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX rubric_review_draft ON rubric_review (tenant_id, draft_id, reviewed_at);
SELECT wall_off('rubric_review');
GRANT SELECT, INSERT ON rubric_review TO ${runtimeRole};

-- From when on a version scores new cases; without a version, from when on the procedure takes none. A version without
-- a row here is in use from its publication.
CREATE TABLE rubric_effect (
    tenant_id         uuid NOT NULL,
    id                uuid NOT NULL,
    procedure_code    text NOT NULL,
    rubric_version_id uuid,
    review_id         uuid,
    effective_from    timestamptz NOT NULL,
    zone              text NOT NULL,
    reason            text NOT NULL CHECK (reason <> ''),
    decided_by        uuid NOT NULL,
    decided_name      text NOT NULL,
    decided_at        timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, rubric_version_id),
    FOREIGN KEY (tenant_id, rubric_version_id) REFERENCES rubric_version (tenant_id, id),
    FOREIGN KEY (tenant_id, review_id) REFERENCES rubric_review (tenant_id, id),
    FOREIGN KEY (tenant_id, decided_by) REFERENCES person (tenant_id, id),
    CHECK ((rubric_version_id IS NULL) = (review_id IS NULL)),
    CHECK (effective_from >= decided_at)
);
CREATE INDEX rubric_effect_procedure ON rubric_effect (tenant_id, procedure_code, effective_from);
SELECT wall_off('rubric_effect');
GRANT SELECT, INSERT ON rubric_effect TO ${runtimeRole};
