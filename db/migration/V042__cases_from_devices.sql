-- Cases entered on a device without a network: each content once, by the id the device made for it, with what the clocks
-- said. What cannot simply be entered is kept here until its trainee decides.
CREATE TABLE case_submission (
    tenant_id     uuid NOT NULL,
    id            uuid NOT NULL,
    -- Made on the device. The same id with another content is a further row.
    submission_id uuid NOT NULL,
    -- SHA-256 of the content.
    content_hash  text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'),
    -- The answers as sent, canonical JSON.
    content       text NOT NULL,
    reference     text NOT NULL,
    programme_id  uuid NOT NULL,
    sent_by       uuid NOT NULL,
    -- By the device's own clock and in its own zone, when the case was kept there.
    kept_at       timestamptz NOT NULL,
    kept_zone     text NOT NULL,
    -- Milliseconds of a clock nobody can set: from the start of the page to keeping, and from keeping to sending. The
    -- second is null when the page was started anew in between.
    page_ms       bigint NOT NULL CHECK (page_ms >= 0),
    waited_ms     bigint CHECK (waited_ms >= 0),
    received_at   timestamptz NOT NULL,
    -- The case it became; null while it waits for a person, and when that person put it away.
    case_id       uuid,
    -- Why it was not entered at once; null when it was.
    aside         text CHECK (aside IN ('OTHER_CONTENT', 'END_AHEAD')),
    settled_at    timestamptz,
    settled_by    uuid,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, submission_id, content_hash),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, sent_by) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, case_id) REFERENCES surgical_case (tenant_id, id),
    FOREIGN KEY (tenant_id, settled_by) REFERENCES person (tenant_id, id),
    CHECK (aside IS NOT NULL OR case_id IS NOT NULL),
    CHECK ((settled_at IS NULL) = (settled_by IS NULL)),
    CHECK (aside IS NOT NULL OR settled_at IS NULL)
);
-- Of one id at most one content was entered by itself.
CREATE UNIQUE INDEX case_submission_first ON case_submission (tenant_id, submission_id) WHERE aside IS NULL;
CREATE INDEX case_submission_waiting ON case_submission (tenant_id, sent_by)
    WHERE aside IS NOT NULL AND settled_at IS NULL;
SELECT wall_off('case_submission');
GRANT SELECT, INSERT, UPDATE (case_id, settled_at, settled_by) ON case_submission TO ${runtimeRole};
