-- Meetings of a programme's committee: who is invited, who was there, whom it speaks about. What counts of this for a
-- decision stands signed inside the decision.
CREATE TABLE meeting (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    planned_at   timestamptz NOT NULL,
    chair_id     uuid NOT NULL,
    state        text NOT NULL DEFAULT 'PLANNED' CHECK (state IN ('PLANNED', 'OPEN', 'CLOSED', 'CANCELLED')),
    planned_by   uuid NOT NULL,
    created_at   timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, chair_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, planned_by) REFERENCES person (tenant_id, id)
);
CREATE INDEX meeting_programme ON meeting (tenant_id, programme_id, planned_at);
SELECT wall_off('meeting');
GRANT SELECT, INSERT, UPDATE ON meeting TO ${runtimeRole};

CREATE TABLE meeting_member (
    tenant_id  uuid NOT NULL,
    meeting_id uuid NOT NULL,
    person_id  uuid NOT NULL,
    present    boolean NOT NULL DEFAULT false,
    PRIMARY KEY (tenant_id, meeting_id, person_id),
    FOREIGN KEY (tenant_id, meeting_id) REFERENCES meeting (tenant_id, id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX meeting_member_person ON meeting_member (tenant_id, person_id);
SELECT wall_off('meeting_member');
GRANT SELECT, INSERT, UPDATE ON meeting_member TO ${runtimeRole};

CREATE TABLE meeting_trainee (
    tenant_id  uuid NOT NULL,
    meeting_id uuid NOT NULL,
    trainee_id uuid NOT NULL,
    PRIMARY KEY (tenant_id, meeting_id, trainee_id),
    FOREIGN KEY (tenant_id, meeting_id) REFERENCES meeting (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX meeting_trainee_person ON meeting_trainee (tenant_id, trainee_id);
SELECT wall_off('meeting_trainee');
GRANT SELECT, INSERT, DELETE ON meeting_trainee TO ${runtimeRole};

-- A member who declared not to be free about a trainee, in the one meeting; said again, the newest words stay.
CREATE TABLE meeting_conflict (
    tenant_id   uuid NOT NULL,
    meeting_id  uuid NOT NULL,
    member_id   uuid NOT NULL,
    trainee_id  uuid NOT NULL,
    reason      text NOT NULL CHECK (reason <> ''),
    declared_by uuid NOT NULL,
    declared_at timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, meeting_id, member_id, trainee_id),
    FOREIGN KEY (tenant_id, meeting_id, member_id) REFERENCES meeting_member (tenant_id, meeting_id, person_id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, declared_by) REFERENCES person (tenant_id, id)
);
SELECT wall_off('meeting_conflict');
GRANT SELECT, INSERT, UPDATE ON meeting_conflict TO ${runtimeRole};

-- The evidence about one trainee as known at an instant, kept word for word for one meeting.
CREATE TABLE evidence_pack (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    meeting_id   uuid NOT NULL,
    trainee_id   uuid NOT NULL,
    cut_off      timestamptz NOT NULL,
    content      text NOT NULL,
    content_hash text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    frozen_by    uuid NOT NULL,
    frozen_at    timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, meeting_id, trainee_id),
    FOREIGN KEY (tenant_id, meeting_id) REFERENCES meeting (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, frozen_by) REFERENCES person (tenant_id, id),
    CHECK (cut_off <= frozen_at)
);
CREATE INDEX evidence_pack_trainee ON evidence_pack (tenant_id, trainee_id);
SELECT wall_off('evidence_pack');
GRANT SELECT, INSERT ON evidence_pack TO ${runtimeRole};
