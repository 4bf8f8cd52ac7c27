-- Passkeys: how an account can log in and sign without a password, and the signatures made with one.

-- Belongs to the account, like the password beside it. A key is never changed: the server may add one, note its use, or
-- remove it for its owner. Ids and keys are base64url; the key is a COSE_Key (RFC 9052).
CREATE TABLE passkey (
    id              uuid PRIMARY KEY,
    account_id      uuid NOT NULL REFERENCES login_account (id),
    credential_id   text NOT NULL UNIQUE,
    public_key      text NOT NULL,
    algorithm       integer NOT NULL,
    label           text NOT NULL,
    signature_count bigint NOT NULL,
    created_at      timestamptz NOT NULL,
    last_used_at    timestamptz
);
CREATE INDEX passkey_account ON passkey (account_id);
GRANT SELECT, INSERT, UPDATE (signature_count, last_used_at), DELETE ON passkey TO ${runtimeRole};

-- A record signed with a passkey: all that is needed to verify the signature again, though the passkey be removed. A
-- record signed with a password has no row here.
CREATE TABLE signature_assertion (
    tenant_id          uuid NOT NULL REFERENCES organisation (tenant_id),
    id                 uuid NOT NULL,
    record_kind        text NOT NULL,
    record_id          uuid NOT NULL,
    challenge          text NOT NULL,
    credential_id      text NOT NULL,
    public_key         text NOT NULL,
    algorithm          integer NOT NULL,
    authenticator_data text NOT NULL,
    client_data        text NOT NULL,
    signature          text NOT NULL,
    rp_id              text NOT NULL,
    origin             text NOT NULL,
    made_at            timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, record_kind, record_id)
);
SELECT wall_off('signature_assertion');
GRANT SELECT, INSERT ON signature_assertion TO ${runtimeRole};
