-- What a trainee's way begins with, and sheets that change hands with what is on them.

-- Induction, baseline, goals of the year and practice away from patients. Never changed: what was wrong is answered and
-- written again.
CREATE TABLE training_entry (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    trainee_id   uuid NOT NULL,
    kind         text NOT NULL CHECK (kind IN ('INDUCTION', 'BASELINE', 'GOAL', 'WET_LAB')),
    -- What was practised; only for practice.
    exercise     text CHECK (exercise IN ('FLAP', 'SUTURE', 'CONJUNCTIVA', 'OSTIUM', 'DEVICE', 'OTHER')),
    on_day       date NOT NULL,
    said         text NOT NULL,
    written_by   uuid NOT NULL,
    written_name text NOT NULL,
    written_role text NOT NULL,
    written_at   timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, written_by) REFERENCES person (tenant_id, id),
    CHECK ((kind = 'WET_LAB') = (exercise IS NOT NULL))
);
CREATE INDEX training_entry_trainee ON training_entry (tenant_id, trainee_id);
SELECT wall_off('training_entry');
GRANT SELECT, INSERT ON training_entry TO ${runtimeRole};

-- A supervisor saw the practice, or did not, and says why.
CREATE TABLE training_answer (
    tenant_id     uuid NOT NULL,
    id            uuid NOT NULL,
    entry_id      uuid NOT NULL,
    confirmed     boolean NOT NULL,
    said          text NOT NULL,
    answered_by   uuid NOT NULL,
    answered_name text NOT NULL,
    answered_role text NOT NULL,
    answered_at   timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, entry_id),
    FOREIGN KEY (tenant_id, entry_id) REFERENCES training_entry (tenant_id, id),
    FOREIGN KEY (tenant_id, answered_by) REFERENCES person (tenant_id, id)
);
SELECT wall_off('training_answer');
GRANT SELECT, INSERT ON training_answer TO ${runtimeRole};

-- How many steps were answered when a sheet changed hands; nothing for a sheet handed on untouched. Columns without a
-- value are no part of a row's hash.
ALTER TABLE sheet_assignment ADD COLUMN answered_steps integer CHECK (answered_steps >= 0);
