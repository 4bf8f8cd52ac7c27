-- New versions, voids and contests of signed sheets. Every statement is signed: its canonical text and hash stand in the
-- row beside what is counted by. The server may add statements and read them; only the draft of a version goes again.

ALTER TABLE score_sheet
    DROP CONSTRAINT score_sheet_state_check,
    ADD CONSTRAINT score_sheet_state_check CHECK (state IN ('OPEN', 'SIGNED', 'REOPENED', 'VOID'));

-- A signed sheet that is open again for its next version. Signed or dropped, the row goes.
CREATE TABLE version_draft (
    tenant_id    uuid NOT NULL,
    sheet_id     uuid NOT NULL,
    version_no   integer NOT NULL CHECK (version_no >= 2),
    editor_id    uuid NOT NULL,
    reason       text NOT NULL,
    opened_at    timestamptz NOT NULL,
    -- The trainee's part as the version says that counts meanwhile.
    counted_part text NOT NULL CHECK (counted_part IN ('WHOLE_CASE', 'PARTS', 'ASSISTED')),
    PRIMARY KEY (tenant_id, sheet_id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, editor_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX version_draft_editor ON version_draft (tenant_id, editor_id);
SELECT wall_off('version_draft');
GRANT SELECT, INSERT, DELETE ON version_draft TO ${runtimeRole};

-- Who signs new versions in place of a scorer who left.
CREATE TABLE version_delegate (
    tenant_id       uuid NOT NULL,
    id              uuid NOT NULL,
    sheet_id        uuid NOT NULL,
    signed_sheet_id uuid NOT NULL,
    delegate_id     uuid NOT NULL,
    content         text NOT NULL,
    content_hash    text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    signer_id       uuid NOT NULL,
    signer_name     text NOT NULL,
    signer_role     text NOT NULL,
    meaning         text NOT NULL,
    signed_at       timestamptz NOT NULL,
    signed_zone     text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, delegate_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id),
    CHECK (delegate_id <> signer_id)
);
CREATE INDEX version_delegate_sheet ON version_delegate (tenant_id, sheet_id, signed_at);
SELECT wall_off('version_delegate');
GRANT SELECT, INSERT ON version_delegate TO ${runtimeRole};

CREATE TABLE void_request (
    tenant_id       uuid NOT NULL,
    id              uuid NOT NULL,
    sheet_id        uuid NOT NULL,
    signed_sheet_id uuid NOT NULL,
    ground          text NOT NULL CHECK (ground IN ('WRONG_TRAINEE', 'WRONG_CASE', 'SCORED_TWICE', 'OTHER')),
    content         text NOT NULL,
    content_hash    text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    signer_id       uuid NOT NULL,
    signer_name     text NOT NULL,
    signer_role     text NOT NULL,
    meaning         text NOT NULL,
    signed_at       timestamptz NOT NULL,
    signed_zone     text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, id, sheet_id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX void_request_sheet ON void_request (tenant_id, sheet_id, signed_at);
SELECT wall_off('void_request');
GRANT SELECT, INSERT ON void_request TO ${runtimeRole};

-- One decision a request, and a sheet is voided once.
CREATE TABLE void_decision (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    request_id   uuid NOT NULL,
    sheet_id     uuid NOT NULL,
    confirmed    boolean NOT NULL,
    content      text NOT NULL,
    content_hash text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    signer_id    uuid NOT NULL,
    signer_name  text NOT NULL,
    signer_role  text NOT NULL,
    meaning      text NOT NULL,
    signed_at    timestamptz NOT NULL,
    signed_zone  text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, request_id),
    FOREIGN KEY (tenant_id, request_id, sheet_id) REFERENCES void_request (tenant_id, id, sheet_id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id)
);
CREATE UNIQUE INDEX void_decision_once ON void_decision (tenant_id, sheet_id) WHERE confirmed;
SELECT wall_off('void_decision');
GRANT SELECT, INSERT ON void_decision TO ${runtimeRole};

-- One contest a signed version.
CREATE TABLE contest (
    tenant_id       uuid NOT NULL,
    id              uuid NOT NULL,
    sheet_id        uuid NOT NULL,
    signed_sheet_id uuid NOT NULL,
    due_at          timestamptz NOT NULL,
    content         text NOT NULL,
    content_hash    text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    signer_id       uuid NOT NULL,
    signer_name     text NOT NULL,
    signer_role     text NOT NULL,
    meaning         text NOT NULL,
    signed_at       timestamptz NOT NULL,
    signed_zone     text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, signed_sheet_id),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, signed_sheet_id) REFERENCES signed_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX contest_sheet ON contest (tenant_id, sheet_id);
SELECT wall_off('contest');
GRANT SELECT, INSERT ON contest TO ${runtimeRole};

-- What was said in a contest, in order; it ends once.
CREATE TABLE contest_step (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    contest_id   uuid NOT NULL,
    ordinal      integer NOT NULL CHECK (ordinal >= 1),
    kind         text NOT NULL CHECK (kind IN ('CONTEST_REPLIED', 'REVIEWER_NAMED', 'CONTEST_UPHELD',
                                               'CONTEST_NOT_UPHELD', 'CONTEST_WITHDRAWN')),
    reviewer_id  uuid,
    content      text NOT NULL,
    content_hash text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    signer_id    uuid NOT NULL,
    signer_name  text NOT NULL,
    signer_role  text NOT NULL,
    meaning      text NOT NULL,
    signed_at    timestamptz NOT NULL,
    signed_zone  text NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, contest_id, ordinal),
    FOREIGN KEY (tenant_id, contest_id) REFERENCES contest (tenant_id, id),
    FOREIGN KEY (tenant_id, reviewer_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, signer_id) REFERENCES person (tenant_id, id),
    CHECK ((kind = 'REVIEWER_NAMED') = (reviewer_id IS NOT NULL)),
    CHECK (reviewer_id <> signer_id)
);
CREATE UNIQUE INDEX contest_step_end ON contest_step (tenant_id, contest_id)
    WHERE kind IN ('CONTEST_UPHELD', 'CONTEST_NOT_UPHELD', 'CONTEST_WITHDRAWN');
CREATE INDEX contest_step_reviewer ON contest_step (tenant_id, reviewer_id);
SELECT wall_off('contest_step');
GRANT SELECT, INSERT ON contest_step TO ${runtimeRole};
