-- From which kinds of device an account has been logged in to, so that a new one can be told its owner.

-- device is a browser and a system, such as FIREFOX/WINDOWS: enough to be recognised by its owner, too little to follow
-- anybody by. known is false from a log-in the owner has not yet called their own.
CREATE TABLE login_device (
    account_id   uuid NOT NULL REFERENCES login_account (id),
    device       text NOT NULL,
    first_at     timestamptz NOT NULL,
    last_at      timestamptz NOT NULL,
    last_address text NOT NULL,
    known        boolean NOT NULL,
    PRIMARY KEY (account_id, device)
);
GRANT SELECT, INSERT, UPDATE (last_at, last_address, known), DELETE ON login_device TO ${runtimeRole};
