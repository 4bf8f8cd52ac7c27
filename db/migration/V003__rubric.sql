-- Published rubrics. A published version never changes: the server may add one and read it, nothing else.

CREATE TABLE rubric_version (
    tenant_id      uuid NOT NULL REFERENCES organisation (tenant_id),
    id             uuid NOT NULL,
    procedure_code text NOT NULL,
    version        text NOT NULL,
    title          text NOT NULL,
    family         text NOT NULL,
    content        text NOT NULL,
    content_hash   text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    published_at   timestamptz NOT NULL,
    published_by   uuid NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, procedure_code, version),
    FOREIGN KEY (tenant_id, published_by) REFERENCES person (tenant_id, id)
);
SELECT wall_off('rubric_version');
GRANT SELECT, INSERT ON rubric_version TO ${runtimeRole};

CREATE TABLE rubric_step (
    tenant_id         uuid NOT NULL,
    rubric_version_id uuid NOT NULL,
    step_code         text NOT NULL,
    position          integer NOT NULL,
    phase             text NOT NULL,
    critical          boolean NOT NULL,
    name              text NOT NULL,
    PRIMARY KEY (tenant_id, rubric_version_id, step_code),
    FOREIGN KEY (tenant_id, rubric_version_id) REFERENCES rubric_version (tenant_id, id)
);
SELECT wall_off('rubric_step');
GRANT SELECT, INSERT ON rubric_step TO ${runtimeRole};
