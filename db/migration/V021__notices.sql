-- Reminders of scores that have not come, and how each person wants to hear of them.

-- One a sheet and stage, whoever scores it then. No reference to the sheet: the fact that somebody was reminded outlives
-- an open sheet that was removed.
CREATE TABLE notice (
    tenant_id uuid NOT NULL,
    id        uuid NOT NULL,
    sheet_id  uuid NOT NULL,
    stage     text NOT NULL CHECK (stage IN ('NUDGE', 'LATE', 'CLOSING')),
    person_id uuid NOT NULL,
    made_at   timestamptz NOT NULL,
    -- When it went out in a digest; null while it did not.
    mailed_at timestamptz,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, sheet_id, stage),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX notice_person ON notice (tenant_id, person_id);
SELECT wall_off('notice');
GRANT SELECT, INSERT, UPDATE (mailed_at) ON notice TO ${runtimeRole};

CREATE TABLE notice_setting (
    tenant_id    uuid NOT NULL,
    person_id    uuid NOT NULL,
    -- Local times; equal ones mean that no hour is quiet.
    quiet_from   time NOT NULL,
    quiet_until  time NOT NULL,
    digest_hour  integer NOT NULL CHECK (digest_hour BETWEEN 0 AND 23),
    mail_on      boolean NOT NULL,
    mail_address text NOT NULL,
    -- The local day of the last digest.
    digest_on    date,
    PRIMARY KEY (tenant_id, person_id),
    FOREIGN KEY (tenant_id, person_id) REFERENCES person (tenant_id, id),
    CHECK (NOT mail_on OR mail_address <> '')
);
SELECT wall_off('notice_setting');
GRANT SELECT, INSERT, UPDATE ON notice_setting TO ${runtimeRole};
