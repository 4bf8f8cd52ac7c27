-- A second factor somebody lost is taken away by two administrators: one asks with a reason, another confirms.

CREATE TABLE factor_clearing (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    person_id    uuid NOT NULL,
    asked_by     uuid NOT NULL,
    reason       text NOT NULL,
    asked_at     timestamptz NOT NULL,
    confirmed_by uuid,
    confirmed_at timestamptz,
    dropped_at   timestamptz,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, asked_by) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, confirmed_by) REFERENCES person (tenant_id, id),
    CHECK (asked_by <> person_id),
    CHECK (confirmed_by IS NULL OR (confirmed_by <> asked_by AND confirmed_by <> person_id)),
    CHECK ((confirmed_by IS NULL) = (confirmed_at IS NULL)),
    CHECK (confirmed_at IS NULL OR dropped_at IS NULL)
);
CREATE UNIQUE INDEX factor_clearing_open ON factor_clearing (tenant_id, person_id)
    WHERE confirmed_at IS NULL AND dropped_at IS NULL;
SELECT wall_off('factor_clearing');
GRANT SELECT, INSERT, UPDATE (confirmed_by, confirmed_at, dropped_at) ON factor_clearing TO ${runtimeRole};

-- When an account's second factor was last taken away, so that its owner reads it.
CREATE TABLE cleared_factor (
    account_id uuid PRIMARY KEY REFERENCES login_account (id),
    cleared_at timestamptz NOT NULL
);
GRANT SELECT, INSERT, UPDATE (cleared_at) ON cleared_factor TO ${runtimeRole};
