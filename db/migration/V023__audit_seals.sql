-- The audit trail is fixed in the ledger by seals: each says how many entries there are from one sequence number to
-- another, and the hash of them all. An entry written after the newest seal waits for the next.
CREATE TABLE audit_seal (
    tenant_id     uuid NOT NULL REFERENCES organisation (tenant_id),
    id            uuid NOT NULL,
    -- Entries with a sequence above the first and up to the last number.
    after_sequence bigint NOT NULL CHECK (after_sequence >= 0),
    last_sequence  bigint NOT NULL,
    entries        bigint NOT NULL CHECK (entries > 0),
    rows_hash      text NOT NULL CHECK (rows_hash ~ '^[0-9a-f]{64}$'),
    sealed_at      timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, after_sequence),
    UNIQUE (tenant_id, last_sequence),
    CHECK (last_sequence > after_sequence)
);
SELECT wall_off('audit_seal');
GRANT SELECT, INSERT ON audit_seal TO ${runtimeRole};
