-- What hangs on a signed version: why it needs a second signature, that signature, and the trainee's answer. Like the
-- version itself these rows are only ever added.

-- Why a version needs countersigning, as determined when it was signed; also inside the signed content.
CREATE TABLE countersign_reason (
    tenant_id       uuid NOT NULL,
    signed_sheet_id uuid NOT NULL,
    reason          text NOT NULL CHECK (reason IN ('NEW_SCORER', 'BLOCKING_EVENT', 'FIRST_INDEPENDENT')),
    PRIMARY KEY (tenant_id, signed_sheet_id, reason),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id)
);
SELECT wall_off('countersign_reason');
GRANT SELECT, INSERT ON countersign_reason TO ${runtimeRole};

CREATE TABLE countersignature (
    tenant_id       uuid NOT NULL,
    id              uuid NOT NULL,
    signed_sheet_id uuid NOT NULL,
    event           text NOT NULL CHECK (event IN ('COUNTERSIGNED', 'COUNTERSIGN_REFUSED')),
    content         text NOT NULL,
    content_hash    text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    record_hash     text NOT NULL CHECK (record_hash ~ '^[0-9a-f]{64}$'),
    signer_id       uuid NOT NULL,
    signer_name     text NOT NULL,
    signer_role     text NOT NULL,
    meaning         text NOT NULL,
    words           text NOT NULL,
    signed_at       timestamptz NOT NULL,
    signed_zone     text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, signed_sheet_id, event, signer_id),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id),
    CHECK (event = 'COUNTERSIGNED' OR words <> '')
);
-- One countersignature is enough, and a second person's would be a second answer to one question.
CREATE UNIQUE INDEX countersignature_given ON countersignature (tenant_id, signed_sheet_id)
    WHERE event = 'COUNTERSIGNED';
SELECT wall_off('countersignature');
GRANT SELECT, INSERT ON countersignature TO ${runtimeRole};

CREATE TABLE acknowledgement (
    tenant_id       uuid NOT NULL,
    id              uuid NOT NULL,
    signed_sheet_id uuid NOT NULL,
    event           text NOT NULL CHECK (event IN ('ACKNOWLEDGED', 'NOT_ACKNOWLEDGED')),
    content         text NOT NULL,
    content_hash    text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    record_hash     text NOT NULL CHECK (record_hash ~ '^[0-9a-f]{64}$'),
    signer_id       uuid NOT NULL,
    signer_name     text NOT NULL,
    signer_role     text NOT NULL,
    meaning         text NOT NULL,
    words           text NOT NULL,
    signed_at       timestamptz NOT NULL,
    signed_zone     text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, signed_sheet_id, event, signer_id),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id),
    CHECK (event = 'ACKNOWLEDGED' OR words <> '')
);
SELECT wall_off('acknowledgement');
GRANT SELECT, INSERT ON acknowledgement TO ${runtimeRole};

-- A director lets one sheet be signed that had stayed unsigned too long.
CREATE TABLE late_release (
    tenant_id     uuid NOT NULL,
    id            uuid NOT NULL,
    sheet_id      uuid NOT NULL,
    released_by   uuid NOT NULL,
    released_name text NOT NULL,
    released_role text NOT NULL,
    reason        text NOT NULL CHECK (reason <> ''),
    released_at   timestamptz NOT NULL,
    released_zone text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, sheet_id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, released_by) REFERENCES person (tenant_id, id)
);
SELECT wall_off('late_release');
GRANT SELECT, INSERT ON late_release TO ${runtimeRole};

-- That a person accepted what a signature here means, word for word, before the first one.
CREATE TABLE signing_statement (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    person_id    uuid NOT NULL,
    version_no   integer NOT NULL CHECK (version_no >= 1),
    statement    text NOT NULL,
    printed_name text NOT NULL,
    accepted_at  timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, person_id, version_no),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('signing_statement');
GRANT SELECT, INSERT ON signing_statement TO ${runtimeRole};
