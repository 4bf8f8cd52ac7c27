-- Steps answered several at a time, the day a case is planned for, what the trainee wants to work on, and codes that
-- hand a sheet to the supervisor's own device.

-- True when the step was answered together with others in one action, so that flat sheets can be told from quick ones.
ALTER TABLE sheet_step ADD COLUMN in_bulk boolean NOT NULL DEFAULT false;

-- The calendar day at the site; null while nobody said.
ALTER TABLE surgical_case ADD COLUMN planned_on date;
CREATE INDEX surgical_case_planned ON surgical_case (tenant_id, planned_scorer_id, planned_on) WHERE state = 'PLANNED';

ALTER TABLE case_trainee ADD COLUMN goal text NOT NULL DEFAULT '';
GRANT UPDATE (goal) ON case_trainee TO ${runtimeRole};

-- One code at a time for a sheet; a new one takes the place of the old. Only the hash of the code is kept. The row goes
-- once the code was used, and with the sheet when an old open sheet is removed.
CREATE TABLE hand_off (
    tenant_id  uuid NOT NULL,
    sheet_id   uuid NOT NULL,
    code_hash  text NOT NULL CHECK (code_hash ~ '^[0-9a-f]{64}$'),
    offered_by uuid NOT NULL,
    expires_at timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, sheet_id),
    UNIQUE (tenant_id, code_hash),
    FOREIGN KEY (tenant_id, sheet_id) REFERENCES score_sheet (tenant_id, id),
    FOREIGN KEY (tenant_id, offered_by) REFERENCES person (tenant_id, id)
);
SELECT wall_off('hand_off');
GRANT SELECT, INSERT, UPDATE, DELETE ON hand_off TO ${runtimeRole};
