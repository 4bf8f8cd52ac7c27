-- What the competency model estimated from a programme's signed sheets of one procedure. Written once each; the newest
-- of an engine version is in force.

CREATE TABLE population_fit (
    tenant_id      uuid NOT NULL,
    id             uuid NOT NULL,
    programme_id   uuid NOT NULL,
    procedure_code text NOT NULL,
    engine_version text NOT NULL,
    -- The newest signature among the sheets, and how many they were.
    data_until     timestamptz NOT NULL,
    sheets         integer NOT NULL CHECK (sheets >= 1),
    own_fit        boolean NOT NULL,
    content        text NOT NULL,
    fitted_at      timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id)
);
CREATE INDEX population_fit_newest ON population_fit (tenant_id, programme_id, procedure_code, engine_version, fitted_at);
SELECT wall_off('population_fit');
GRANT SELECT, INSERT ON population_fit TO ${runtimeRole};
