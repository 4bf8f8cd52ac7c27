-- What a director opens to a visitor: named records, for a purpose, from one day to another. Never deleted, only ended.

CREATE TABLE visitor_access (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    visitor_id   uuid NOT NULL,
    purpose      text NOT NULL,
    starts_at    timestamptz NOT NULL,
    ends_at      timestamptz NOT NULL,
    given_by     uuid NOT NULL,
    given_at     timestamptz NOT NULL,
    ended_at     timestamptz,
    ended_by     uuid,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, visitor_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, given_by) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, ended_by) REFERENCES person (tenant_id, id),
    CHECK (ends_at > starts_at),
    CHECK ((ended_at IS NULL) = (ended_by IS NULL))
);
CREATE INDEX visitor_access_visitor ON visitor_access (tenant_id, visitor_id);
CREATE INDEX visitor_access_programme ON visitor_access (tenant_id, programme_id);
SELECT wall_off('visitor_access');
GRANT SELECT, INSERT, UPDATE (ended_at, ended_by) ON visitor_access TO ${runtimeRole};

-- Either all signed records of a trainee in the programme, or one signed record.
CREATE TABLE visitor_record (
    tenant_id       uuid NOT NULL,
    id              uuid NOT NULL,
    access_id       uuid NOT NULL,
    trainee_id      uuid,
    signed_sheet_id uuid,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, access_id) REFERENCES visitor_access (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id),
    CHECK (num_nonnulls(trainee_id, signed_sheet_id) = 1)
);
CREATE INDEX visitor_record_access ON visitor_record (tenant_id, access_id);
SELECT wall_off('visitor_record');
GRANT SELECT, INSERT ON visitor_record TO ${runtimeRole};
