-- Checkpoints of the evidence ledger: its root at a size, signed with a key that is kept outside the database, so that
-- whoever holds one can tell later whether the evidence still is what it was.

-- The public half of every key that ever signed, in the text form offices keep (name+id+base64).
CREATE TABLE ledger_key (
    tenant_id    uuid NOT NULL REFERENCES organisation (tenant_id),
    id           uuid NOT NULL,
    verifier_key text NOT NULL,
    since        timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, verifier_key)
);
SELECT wall_off('ledger_key');
GRANT SELECT, INSERT ON ledger_key TO ${runtimeRole};

CREATE TABLE ledger_checkpoint (
    tenant_id uuid NOT NULL REFERENCES organisation (tenant_id),
    id        uuid NOT NULL,
    -- Leaves it covers; its own leaf is the next one.
    size      bigint NOT NULL CHECK (size >= 1),
    -- Base64, as in the text.
    root      text NOT NULL,
    issued_at timestamptz NOT NULL,
    -- The signed note, word for word as it is handed out.
    note      text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, size)
);
SELECT wall_off('ledger_checkpoint');
GRANT SELECT, INSERT ON ledger_checkpoint TO ${runtimeRole};

-- A check of the evidence that somebody asked for: how far it is and what it found. It proves nothing, so it may change.
CREATE TABLE ledger_check (
    tenant_id    uuid NOT NULL REFERENCES organisation (tenant_id),
    id           uuid NOT NULL,
    asked_by     uuid NOT NULL,
    asked_at     timestamptz NOT NULL,
    leaves       bigint NOT NULL,
    leaves_done  bigint NOT NULL DEFAULT 0,
    finished_at  timestamptz,
    -- What came out, as JSON; null until it is finished.
    result       text,
    PRIMARY KEY (tenant_id, id),
    CHECK ((finished_at IS NULL) = (result IS NULL))
);
CREATE INDEX ledger_check_newest ON ledger_check (tenant_id, asked_at);
SELECT wall_off('ledger_check');
GRANT SELECT, INSERT, UPDATE (leaves_done, finished_at, result) ON ledger_check TO ${runtimeRole};

-- Taps belong to a draft and may be tidied away with it; they are no evidence.
GRANT DELETE ON sheet_tap TO ${runtimeRole};
