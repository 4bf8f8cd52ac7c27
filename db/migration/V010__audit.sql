-- What was done and who looked, written in the transaction that did it. The server may add entries and read them.

CREATE TABLE audit_entry (
    tenant_id      uuid NOT NULL REFERENCES organisation (tenant_id),
    sequence       bigint GENERATED ALWAYS AS IDENTITY,
    -- Clock of the server; device_at is that of the device for what was done without a connection.
    entered_at     timestamptz NOT NULL,
    device_at      timestamptz,
    action         text NOT NULL,
    actor_id       uuid,
    actor_roles    text NOT NULL,
    on_behalf_of   uuid,
    about_id       uuid,
    programme_id   uuid,
    record_kind    text NOT NULL,
    record_id      uuid,
    record_version integer,
    record_label   text NOT NULL,
    reason         text,
    value_before   text,
    value_after    text,
    session_hash   text CHECK (session_hash ~ '^[0-9a-f]{64}$'),
    source_address text NOT NULL,
    app_version    text NOT NULL,
    -- For a reading: the hour it fell into. One person reading one record gives one entry an hour.
    seen_hour      timestamptz,
    PRIMARY KEY (tenant_id, sequence),
    UNIQUE (tenant_id, actor_id, record_kind, record_id, seen_hour),
    FOREIGN KEY (tenant_id, actor_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, on_behalf_of) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, about_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id)
);
CREATE INDEX audit_entry_about ON audit_entry (tenant_id, about_id, sequence);
CREATE INDEX audit_entry_actor ON audit_entry (tenant_id, actor_id, sequence);
CREATE INDEX audit_entry_programme ON audit_entry (tenant_id, programme_id, sequence);
SELECT wall_off('audit_entry');
GRANT SELECT, INSERT ON audit_entry TO ${runtimeRole};

-- Refused log-ins by hashed account name and hour, the same row whether or not such an account exists. Nobody is known
-- yet, so they stand outside the wall.
CREATE TABLE login_refusal (
    subject      text NOT NULL,
    hour         timestamptz NOT NULL,
    wrong        integer NOT NULL,
    blocked      integer NOT NULL,
    last_at      timestamptz NOT NULL,
    last_address text NOT NULL,
    PRIMARY KEY (subject, hour)
);
CREATE INDEX login_refusal_hour ON login_refusal (hour);
GRANT SELECT, INSERT, UPDATE, DELETE ON login_refusal TO ${runtimeRole};
