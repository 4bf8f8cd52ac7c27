-- Notes trainees write for themselves. They are evidence for nobody, so they may go again; every statement of the
-- program that reads them names their author.
CREATE TABLE reflection (
    tenant_id      uuid NOT NULL,
    id             uuid NOT NULL,
    author_id      uuid NOT NULL,
    -- What it is about; empty for training as a whole, or for no step in particular.
    procedure_code text NOT NULL,
    step_code      text NOT NULL,
    note           text NOT NULL CHECK (note <> ''),
    written_at     timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, author_id) REFERENCES person (tenant_id, id),
    CHECK (step_code = '' OR procedure_code <> '')
);
CREATE INDEX reflection_author ON reflection (tenant_id, author_id, written_at DESC);
SELECT wall_off('reflection');
GRANT SELECT, INSERT, DELETE ON reflection TO ${runtimeRole};
