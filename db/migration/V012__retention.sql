-- How long records are kept, holds that keep them longer, and what is left of an open sheet that was removed.

-- The newest row of a programme holds; the older ones are the history of the setting.
CREATE TABLE retention_setting (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    draft_days   integer NOT NULL CHECK (draft_days BETWEEN 30 AND 3650),
    record_years integer NOT NULL CHECK (record_years BETWEEN 1 AND 100),
    export_days  integer NOT NULL CHECK (export_days BETWEEN 1 AND 365),
    set_by       uuid NOT NULL,
    set_at       timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, set_by) REFERENCES person (tenant_id, id)
);
CREATE INDEX retention_setting_programme ON retention_setting (tenant_id, programme_id, set_at);
SELECT wall_off('retention_setting');
GRANT SELECT, INSERT ON retention_setting TO ${runtimeRole};

-- While a trainee is under a hold, no retention job removes anything about that trainee.
CREATE TABLE record_hold (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    trainee_id   uuid NOT NULL,
    reason       text NOT NULL,
    set_by       uuid NOT NULL,
    set_at       timestamptz NOT NULL,
    ended_by     uuid,
    ended_at     timestamptz,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, set_by) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, ended_by) REFERENCES person (tenant_id, id),
    CHECK ((ended_at IS NULL) = (ended_by IS NULL))
);
CREATE UNIQUE INDEX record_hold_current ON record_hold (tenant_id, programme_id, trainee_id) WHERE ended_at IS NULL;
SELECT wall_off('record_hold');
GRANT SELECT, INSERT, UPDATE (ended_by, ended_at) ON record_hold TO ${runtimeRole};

-- The last change of an open sheet, and when its scorer was told that it will be removed. Sheets older than this column
-- count from its arrival.
ALTER TABLE score_sheet
    ADD COLUMN touched_at timestamptz NOT NULL DEFAULT now(),
    ADD COLUMN removal_told_at timestamptz;
CREATE INDEX score_sheet_untouched ON score_sheet (tenant_id, touched_at) WHERE state = 'OPEN';

-- What stays of a removed sheet: that there was one, asked of whom about whom, and why it went.
CREATE TABLE removed_sheet (
    tenant_id  uuid NOT NULL,
    id         uuid NOT NULL,
    case_id    uuid NOT NULL,
    trainee_id uuid NOT NULL,
    scorer_id  uuid NOT NULL,
    opened_at  timestamptz NOT NULL,
    touched_at timestamptz NOT NULL,
    told_at    timestamptz NOT NULL,
    removed_at timestamptz NOT NULL,
    days       integer NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, case_id, trainee_id) REFERENCES case_trainee (tenant_id, case_id, trainee_id),
    FOREIGN KEY (tenant_id, scorer_id) REFERENCES person (tenant_id, id)
);
CREATE INDEX removed_sheet_case ON removed_sheet (tenant_id, case_id);
CREATE INDEX removed_sheet_trainee ON removed_sheet (tenant_id, trainee_id);
SELECT wall_off('removed_sheet');
GRANT SELECT, INSERT ON removed_sheet TO ${runtimeRole};

-- Open sheets may go; a signed or void one may not, whatever the statement says.
GRANT DELETE ON score_sheet, sheet_tap TO ${runtimeRole};
-- That a sheet was handed on is evidence and outlives the sheet.
ALTER TABLE sheet_assignment DROP CONSTRAINT sheet_assignment_tenant_id_sheet_id_fkey;
CREATE FUNCTION only_open_sheets_go() RETURNS trigger
    LANGUAGE plpgsql AS
$$
BEGIN
    IF OLD.state <> 'OPEN' THEN
        RAISE EXCEPTION 'a sheet in state % stays', OLD.state;
    END IF;
    RETURN OLD;
END
$$;
CREATE TRIGGER only_open_sheets_go BEFORE DELETE ON score_sheet
    FOR EACH ROW EXECUTE FUNCTION only_open_sheets_go();
