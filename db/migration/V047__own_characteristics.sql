-- What trainees said about themselves of their own will, for the tables on equality alone: apart from everything else, one
-- row an answer, gone when the person takes it back. No number about a trainee reads it.
CREATE TABLE own_characteristic (
    tenant_id      uuid NOT NULL,
    person_id      uuid NOT NULL,
    characteristic text NOT NULL CHECK (characteristic IN ('GENDER', 'AGE', 'QUALIFIED')),
    answer         text NOT NULL CHECK (answer <> ''),
    said_at        timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, person_id, characteristic),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('own_characteristic');
GRANT SELECT, INSERT, DELETE ON own_characteristic TO ${runtimeRole};
