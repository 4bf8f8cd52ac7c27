-- The evidence ledger: an append-only Merkle tree per organisation (hashing of RFC 9162 section 2.1). A leaf fixes the
-- rows of one record; the server may add leaves and read them, nothing else.

CREATE TABLE ledger_leaf (
    tenant_id  uuid NOT NULL REFERENCES organisation (tenant_id),
    leaf_index bigint NOT NULL CHECK (leaf_index >= 0),
    kind       text NOT NULL,
    record_id  uuid NOT NULL,
    -- Canonical JSON: what the leaf is about, when it was appended, and the hash of the rows it fixes, table by table.
    entry      text NOT NULL,
    leaf_hash  bytea NOT NULL CHECK (length(leaf_hash) = 32),
    PRIMARY KEY (tenant_id, leaf_index),
    UNIQUE (tenant_id, kind, record_id)
);
SELECT wall_off('ledger_leaf');
GRANT SELECT, INSERT ON ledger_leaf TO ${runtimeRole};

-- The hash of every complete subtree of 2^level leaves, so that roots and proofs take a handful of rows.
CREATE TABLE ledger_node (
    tenant_id uuid NOT NULL REFERENCES organisation (tenant_id),
    level     smallint NOT NULL CHECK (level BETWEEN 1 AND 62),
    position  bigint NOT NULL CHECK (position >= 0),
    hash      bytea NOT NULL CHECK (length(hash) = 32),
    PRIMARY KEY (tenant_id, level, position)
);
SELECT wall_off('ledger_node');
GRANT SELECT, INSERT ON ledger_node TO ${runtimeRole};

-- Names of places change; what a trainee claims is a draft until a supervisor confirms it. Neither is evidence.
GRANT UPDATE (name) ON programme, site TO ${runtimeRole};
GRANT UPDATE (claimed_part) ON case_trainee TO ${runtimeRole};
