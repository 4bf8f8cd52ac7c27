-- What a chair prepares before signing. Signed or dropped, the row goes.
CREATE TABLE decision_draft (
    tenant_id  uuid NOT NULL,
    id         uuid NOT NULL,
    pack_id    uuid NOT NULL,
    author_id  uuid NOT NULL,
    content    text NOT NULL,
    written_at timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, pack_id),
    FOREIGN KEY (tenant_id, pack_id) REFERENCES evidence_pack (tenant_id, id),
    FOREIGN KEY (tenant_id, author_id) REFERENCES person (tenant_id, id)
);
SELECT wall_off('decision_draft');
GRANT SELECT, INSERT, UPDATE, DELETE ON decision_draft TO ${runtimeRole};

-- A signed decision. Its canonical text and hash stand beside what is looked up by.
CREATE TABLE committee_decision (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    meeting_id   uuid NOT NULL,
    pack_id      uuid NOT NULL,
    trainee_id   uuid NOT NULL,
    family       text NOT NULL,
    bands        text NOT NULL CHECK (bands <> '' AND bands ~ '^A?B?C?D?$'),
    level        text CHECK (level IN ('E0', 'E1', 'E2', 'E3', 'E4', 'E5')),
    review_on    date NOT NULL,
    content      text NOT NULL,
    content_hash text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    signer_id    uuid NOT NULL,
    signer_name  text NOT NULL,
    signer_role  text NOT NULL,
    meaning      text NOT NULL,
    signed_at    timestamptz NOT NULL,
    signed_zone  text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    -- In one meeting a matter is decided once.
    UNIQUE (tenant_id, meeting_id, trainee_id, family, bands),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, meeting_id) REFERENCES meeting (tenant_id, id),
    FOREIGN KEY (tenant_id, pack_id) REFERENCES evidence_pack (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id),
    CHECK (trainee_id <> signer_id)
);
CREATE INDEX committee_decision_trainee ON committee_decision (tenant_id, trainee_id, signed_at);
CREATE INDEX committee_decision_programme ON committee_decision (tenant_id, programme_id, signed_at);
SELECT wall_off('committee_decision');
GRANT SELECT, INSERT ON committee_decision TO ${runtimeRole};

-- Everything else that is said about a decision or an entitlement: the letter, an appeal, a suspension.
CREATE TABLE committee_act (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    trainee_id   uuid NOT NULL,
    decision_id  uuid,
    kind         text NOT NULL CHECK (kind IN ('LETTER_SENT', 'APPEALED', 'PANEL_NAMED', 'APPEAL_UPHELD',
                                               'APPEAL_NOT_UPHELD', 'APPEAL_ENDED', 'SUSPENDED', 'REINSTATED')),
    content      text NOT NULL,
    content_hash text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    signer_id    uuid NOT NULL,
    signer_name  text NOT NULL,
    signer_role  text NOT NULL,
    meaning      text NOT NULL,
    signed_at    timestamptz NOT NULL,
    signed_zone  text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, decision_id) REFERENCES committee_decision (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id),
    CHECK ((kind IN ('SUSPENDED', 'REINSTATED')) = (decision_id IS NULL))
);
CREATE UNIQUE INDEX committee_act_once ON committee_act (tenant_id, decision_id, kind)
    WHERE kind IN ('LETTER_SENT', 'APPEALED');
CREATE UNIQUE INDEX committee_act_end ON committee_act (tenant_id, decision_id)
    WHERE kind IN ('APPEAL_UPHELD', 'APPEAL_NOT_UPHELD', 'APPEAL_ENDED');
CREATE INDEX committee_act_decision ON committee_act (tenant_id, decision_id, signed_at);
CREATE INDEX committee_act_trainee ON committee_act (tenant_id, trainee_id, signed_at);
SELECT wall_off('committee_act');
GRANT SELECT, INSERT ON committee_act TO ${runtimeRole};

-- Who hears an appeal, by the statement that named the panel.
CREATE TABLE appeal_panel (
    tenant_id uuid NOT NULL,
    act_id    uuid NOT NULL,
    person_id uuid NOT NULL,
    PRIMARY KEY (tenant_id, act_id, person_id),
    FOREIGN KEY (tenant_id, act_id) REFERENCES committee_act (tenant_id, id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX appeal_panel_person ON appeal_panel (tenant_id, person_id);
SELECT wall_off('appeal_panel');
GRANT SELECT, INSERT ON appeal_panel TO ${runtimeRole};
