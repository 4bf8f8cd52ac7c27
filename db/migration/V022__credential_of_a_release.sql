-- What the director of a late release was recognised by, as every other signed record says in its content. Releases of
-- before say nothing, and columns without a value are no part of a row's hash.
ALTER TABLE late_release
    ADD COLUMN credential text CHECK (credential IN ('PASSWORD', 'PASSKEY')),
    ADD COLUMN assertion_hash text CHECK (assertion_hash ~ '^[0-9a-f]{64}$'),
    ADD CHECK ((credential IS NOT DISTINCT FROM 'PASSKEY') = (assertion_hash IS NOT NULL));
