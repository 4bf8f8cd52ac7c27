-- The numbers a programme works by, as changed from the defaults in the program; the newest row of a key holds.
CREATE TABLE programme_setting (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    key          text NOT NULL,
    value        integer NOT NULL,
    reason       text NOT NULL CHECK (reason <> ''),
    changed_by   uuid NOT NULL,
    changed_at   timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, changed_by) REFERENCES person (tenant_id, id)
);
CREATE INDEX programme_setting_newest ON programme_setting (tenant_id, programme_id, key, changed_at DESC);
SELECT wall_off('programme_setting');
GRANT SELECT, INSERT ON programme_setting TO ${runtimeRole};

-- When a supervisor was introduced to scoring in this programme; the earliest day holds.
CREATE TABLE scorer_introduction (
    tenant_id     uuid NOT NULL,
    id            uuid NOT NULL,
    programme_id  uuid NOT NULL,
    person_id     uuid NOT NULL,
    introduced_on date NOT NULL,
    recorded_by   uuid NOT NULL,
    recorded_at   timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, programme_id, person_id, introduced_on),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, recorded_by) REFERENCES person (tenant_id, id)
);
SELECT wall_off('scorer_introduction');
GRANT SELECT, INSERT ON scorer_introduction TO ${runtimeRole};

-- A log-in several people use, as on a theatre computer. It may prepare and read; it never signs.
ALTER TABLE login_account ADD COLUMN shared boolean NOT NULL DEFAULT false;
