-- Tables that belong to no organisation (log-in, sessions), and the wall every organisation's table gets.
-- ${runtimeRole} is the role the server works as: it owns nothing and cannot step round row-level security.

GRANT USAGE ON SCHEMA public TO ${runtimeRole};

-- One place for the rule, so that no table gets a variant of it. NULLIF: a pooled connection that once carried a
-- tenant answers '' afterwards, and ''::uuid would be an error instead of no rows.
CREATE FUNCTION wall_off(target regclass) RETURNS void
    LANGUAGE plpgsql AS
$$
BEGIN
    EXECUTE format('ALTER TABLE %s ENABLE ROW LEVEL SECURITY', target);
    EXECUTE format('ALTER TABLE %s FORCE ROW LEVEL SECURITY', target);
    EXECUTE format(
        'CREATE POLICY own_organisation ON %s '
        'USING (tenant_id = NULLIF(current_setting(''scrubline.tenant'', true), '''')::uuid) '
        'WITH CHECK (tenant_id = NULLIF(current_setting(''scrubline.tenant'', true), '''')::uuid)', target);
END
$$;
REVOKE ALL ON FUNCTION wall_off(regclass) FROM PUBLIC;

CREATE TABLE login_account (
    id            uuid PRIMARY KEY,
    username      text NOT NULL,
    password_hash text,
    enabled       boolean NOT NULL DEFAULT true,
    created_at    timestamptz NOT NULL
);
CREATE UNIQUE INDEX login_account_username ON login_account (lower(username));
GRANT SELECT, INSERT, UPDATE (password_hash, enabled) ON login_account TO ${runtimeRole};

-- Which organisations an account may enter must be known before one is chosen, so this list stands outside the wall.
CREATE TABLE account_organisation (
    account_id uuid NOT NULL REFERENCES login_account (id),
    tenant_id  uuid NOT NULL,
    PRIMARY KEY (account_id, tenant_id)
);
GRANT SELECT, INSERT ON account_organisation TO ${runtimeRole};

-- A one-time code by which a new person chooses a password. Only its hash is kept.
CREATE TABLE login_invitation (
    code_hash  text PRIMARY KEY,
    account_id uuid NOT NULL REFERENCES login_account (id),
    created_at timestamptz NOT NULL,
    expires_at timestamptz NOT NULL,
    used_at    timestamptz
);
GRANT SELECT, INSERT, UPDATE (used_at) ON login_invitation TO ${runtimeRole};

-- Failed log-ins per subject (an account name or an address, hashed), kept here so that a restart does not forget them.
CREATE TABLE login_throttle (
    subject       text PRIMARY KEY,
    failures      integer NOT NULL,
    last_failure  timestamptz NOT NULL,
    blocked_until timestamptz
);
GRANT SELECT, INSERT, UPDATE, DELETE ON login_throttle TO ${runtimeRole};

-- The token the console prints at the first start; the hash alone is kept and one row is all there ever is.
CREATE TABLE setup_token (
    only_one   boolean PRIMARY KEY DEFAULT true CHECK (only_one),
    token_hash text NOT NULL,
    created_at timestamptz NOT NULL,
    used_at    timestamptz
);
GRANT SELECT, INSERT, UPDATE (token_hash, created_at, used_at) ON setup_token TO ${runtimeRole};

-- Spring Session's own tables (its published PostgreSQL script).
CREATE TABLE spring_session (
    primary_id            char(36) NOT NULL PRIMARY KEY,
    session_id            char(36) NOT NULL,
    creation_time         bigint NOT NULL,
    last_access_time      bigint NOT NULL,
    max_inactive_interval integer NOT NULL,
    expiry_time           bigint NOT NULL,
    principal_name        varchar(100)
);
CREATE UNIQUE INDEX spring_session_ix1 ON spring_session (session_id);
CREATE INDEX spring_session_ix2 ON spring_session (expiry_time);
CREATE INDEX spring_session_ix3 ON spring_session (principal_name);
CREATE TABLE spring_session_attributes (
    session_primary_id char(36) NOT NULL REFERENCES spring_session (primary_id) ON DELETE CASCADE,
    attribute_name     varchar(200) NOT NULL,
    attribute_bytes    bytea NOT NULL,
    PRIMARY KEY (session_primary_id, attribute_name)
);
GRANT SELECT, INSERT, UPDATE, DELETE ON spring_session, spring_session_attributes TO ${runtimeRole};
