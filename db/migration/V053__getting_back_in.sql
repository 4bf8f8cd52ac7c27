-- A way back in for whoever forgot the password, and how much one person may ask for in a time.

-- Where an account's owner reads mail about it: the address that serves, and at most one that waits to be confirmed by a
-- code sent there. Only the code's hash is kept.
CREATE TABLE login_address (
    account_id uuid NOT NULL REFERENCES login_account (id),
    confirmed  boolean NOT NULL,
    address    text NOT NULL,
    set_at     timestamptz NOT NULL,
    code_hash  text,
    code_until timestamptz,
    PRIMARY KEY (account_id, confirmed),
    CHECK ((code_hash IS NULL) = (code_until IS NULL)),
    CHECK (NOT confirmed OR code_hash IS NULL)
);
GRANT SELECT, INSERT, UPDATE (address, set_at, code_hash, code_until), DELETE ON login_address TO ${runtimeRole};

-- A one-time code by which an account's owner chooses a new password. Only its hash is kept.
CREATE TABLE login_link (
    code_hash  text PRIMARY KEY,
    account_id uuid NOT NULL REFERENCES login_account (id),
    created_at timestamptz NOT NULL,
    expires_at timestamptz NOT NULL,
    used_at    timestamptz
);
CREATE INDEX login_link_account ON login_link (account_id);
GRANT SELECT, INSERT, UPDATE (used_at), DELETE ON login_link TO ${runtimeRole};

-- How much of a limited thing somebody has used up: whole_at is when all of it is there again.
CREATE TABLE allowance (
    subject  text PRIMARY KEY,
    whole_at timestamptz NOT NULL
);
GRANT SELECT, INSERT, UPDATE (whole_at), DELETE ON allowance TO ${runtimeRole};
