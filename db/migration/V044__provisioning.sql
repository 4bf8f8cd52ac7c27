-- People an organisation's own directory opens and closes.

-- What the directory says of somebody. opened_here: it opened the account itself, so its name for the person may lead the
-- first log-in through the organisation's provider to it. removed_at hides the person from the directory, from nobody else.
CREATE TABLE provisioned_person (
    tenant_id   uuid NOT NULL,
    person_id   uuid NOT NULL,
    external_id text,
    opened_here boolean NOT NULL,
    changed_at  timestamptz NOT NULL,
    removed_at  timestamptz,
    PRIMARY KEY (tenant_id, person_id),
    UNIQUE (tenant_id, external_id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('provisioned_person');
GRANT SELECT, INSERT, UPDATE (external_id, changed_at, removed_at) ON provisioned_person TO ${runtimeRole};

-- The tokens of directories. Which organisation a request is for must be known before its scope is opened, so this list
-- stands outside the wall. Only hashes are kept.
CREATE TABLE provision_token (
    id           uuid PRIMARY KEY,
    token_hash   text NOT NULL UNIQUE,
    tenant_id    uuid NOT NULL,
    label        text NOT NULL,
    created_at   timestamptz NOT NULL,
    last_used_at timestamptz,
    revoked_at   timestamptz
);
GRANT SELECT, INSERT, UPDATE (last_used_at, revoked_at) ON provision_token TO ${runtimeRole};
