-- A second factor beside the password: codes of an authenticator app, and recovery codes for the day it is lost. Both
-- belong to the account, like its passkeys.

-- The secret is sealed with a key that lies outside the database. No code of a time step at or before last_step is taken
-- again; the server moves it forward in one statement, so that of two requests with the same code one is refused.
CREATE TABLE code_app (
    account_id    uuid PRIMARY KEY REFERENCES login_account (id),
    sealed_secret text NOT NULL,
    last_step     bigint NOT NULL,
    created_at    timestamptz NOT NULL,
    last_used_at  timestamptz
);
GRANT SELECT, INSERT, UPDATE (last_step, last_used_at), DELETE ON code_app TO ${runtimeRole};

-- Each opens once. Only hashes are kept; a new set replaces the old one.
CREATE TABLE recovery_code (
    account_id uuid NOT NULL REFERENCES login_account (id),
    code_hash  text NOT NULL,
    created_at timestamptz NOT NULL,
    used_at    timestamptz,
    PRIMARY KEY (account_id, code_hash)
);
GRANT SELECT, INSERT, UPDATE (used_at), DELETE ON recovery_code TO ${runtimeRole};
