-- What a trainee may do, as a committee decided it: one row a change, the newest that names a band holds for it.
CREATE TABLE entitlement_change (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    trainee_id   uuid NOT NULL,
    -- The order of a trainee's changes, from 1.
    ordinal      integer NOT NULL CHECK (ordinal >= 1),
    family       text NOT NULL CHECK (family IN ('TRABECULECTOMY', 'DRAINAGE_DEVICE', 'DEEP_SCLERECTOMY', 'GEL_STENT',
                                                 'NEEDLING', 'POST_OPERATIVE_CARE')),
    -- Complexity bands in order, such as AB.
    bands        text NOT NULL CHECK (bands <> '' AND bands ~ '^A?B?C?D?$'),
    kind         text NOT NULL CHECK (kind IN ('DECIDED', 'SUSPENDED', 'REINSTATED')),
    level        text CHECK (level IN ('E0', 'E1', 'E2', 'E3', 'E4', 'E5')),
    review_on    date,
    -- The signed decision or statement it follows from.
    source_id    uuid NOT NULL,
    decided_by   uuid NOT NULL,
    decided_at   timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, trainee_id, ordinal),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, decided_by) REFERENCES person (tenant_id, id),
    CHECK (trainee_id <> decided_by),
    CHECK ((kind = 'DECIDED') = (level IS NOT NULL)),
    CHECK ((kind = 'DECIDED') = (review_on IS NOT NULL))
);
CREATE INDEX entitlement_change_programme ON entitlement_change (tenant_id, programme_id);
SELECT wall_off('entitlement_change');
GRANT SELECT, INSERT ON entitlement_change TO ${runtimeRole};
