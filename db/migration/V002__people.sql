-- Organisations (the body that owns the record), their programmes, sites, persons and roles.

CREATE TABLE organisation (
    tenant_id  uuid PRIMARY KEY,
    name       text NOT NULL,
    created_at timestamptz NOT NULL
);
SELECT wall_off('organisation');
GRANT SELECT, INSERT, UPDATE (name) ON organisation TO ${runtimeRole};

CREATE TABLE programme (
    tenant_id  uuid NOT NULL REFERENCES organisation (tenant_id),
    id         uuid NOT NULL,
    name       text NOT NULL,
    zone       text NOT NULL,
    created_at timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, name)
);
SELECT wall_off('programme');
GRANT SELECT, INSERT ON programme TO ${runtimeRole};

CREATE TABLE site (
    tenant_id uuid NOT NULL REFERENCES organisation (tenant_id),
    id        uuid NOT NULL,
    code      text NOT NULL,
    name      text NOT NULL,
    zone      text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, code)
);
SELECT wall_off('site');
GRANT SELECT, INSERT ON site TO ${runtimeRole};

CREATE TABLE person (
    tenant_id    uuid NOT NULL REFERENCES organisation (tenant_id),
    id           uuid NOT NULL,
    account_id   uuid REFERENCES login_account (id),
    printed_name text NOT NULL,
    active       boolean NOT NULL DEFAULT true,
    created_at   timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, account_id)
);
SELECT wall_off('person');
GRANT SELECT, INSERT, UPDATE (active) ON person TO ${runtimeRole};

CREATE TABLE programme_role (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    person_id    uuid NOT NULL,
    role         text NOT NULL CHECK (role IN ('SUPERVISOR', 'TRAINEE', 'DIRECTOR', 'COMMITTEE_MEMBER',
                                               'ADMINISTRATOR', 'VISITOR', 'ANALYST')),
    granted_at   timestamptz NOT NULL,
    ended_at     timestamptz,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id)
);
CREATE UNIQUE INDEX programme_role_current ON programme_role (tenant_id, programme_id, person_id, role)
    WHERE ended_at IS NULL;
CREATE INDEX programme_role_person ON programme_role (tenant_id, person_id);
SELECT wall_off('programme_role');
GRANT SELECT, INSERT, UPDATE (ended_at) ON programme_role TO ${runtimeRole};

-- A declared conflict bars scoring in both directions; it is never deleted, only ended.
CREATE TABLE declared_conflict (
    tenant_id       uuid NOT NULL,
    id              uuid NOT NULL,
    person_id       uuid NOT NULL,
    other_person_id uuid NOT NULL,
    declared_at     timestamptz NOT NULL,
    ended_at        timestamptz,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, other_person_id) REFERENCES person (tenant_id, id),
    CHECK (person_id <> other_person_id)
);
CREATE INDEX declared_conflict_person ON declared_conflict (tenant_id, person_id);
SELECT wall_off('declared_conflict');
GRANT SELECT, INSERT, UPDATE (ended_at) ON declared_conflict TO ${runtimeRole};

-- Cases a trainee operated before joining, as declared; the newest row per procedure holds.
CREATE TABLE prior_experience (
    tenant_id      uuid NOT NULL,
    id             uuid NOT NULL,
    trainee_id     uuid NOT NULL,
    procedure_code text NOT NULL,
    cases          integer NOT NULL CHECK (cases BETWEEN 0 AND 5000),
    declared_at    timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('prior_experience');
GRANT SELECT, INSERT ON prior_experience TO ${runtimeRole};
