-- Sites close, trainees are placed at them for a time, and a programme plans how many cases of a family a month brings.

ALTER TABLE site ADD COLUMN closed_on date;
GRANT UPDATE (name, closed_on) ON site TO ${runtimeRole};

-- Where a trainee works, from the first day to the last and at what share of full time. A placement that ends early, or
-- never began, keeps its row and gets the last day it really had; the day before the first says that it never began.
CREATE TABLE placement (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    trainee_id   uuid NOT NULL,
    site_id      uuid NOT NULL,
    first_day    date NOT NULL,
    last_day     date NOT NULL,
    share        integer NOT NULL CHECK (share BETWEEN 1 AND 100),
    recorded_by  uuid NOT NULL,
    recorded_at  timestamptz NOT NULL,
    ended_on     date,
    ended_by     uuid,
    ended_at     timestamptz,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, site_id) REFERENCES site (tenant_id, id),
    FOREIGN KEY (tenant_id, recorded_by) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, ended_by) REFERENCES person (tenant_id, id),
    CHECK (first_day <= last_day),
    CHECK (ended_on >= first_day - 1 AND ended_on < last_day),
    CHECK ((ended_on IS NULL) = (ended_by IS NULL) AND (ended_on IS NULL) = (ended_at IS NULL))
);
CREATE INDEX placement_trainee ON placement (tenant_id, trainee_id);
SELECT wall_off('placement');
GRANT SELECT, INSERT, UPDATE (ended_on, ended_by, ended_at) ON placement TO ${runtimeRole};

-- Cases of one family of procedures planned for each of the twelve months of a year of training at full time; the newest
-- row of a family holds.
CREATE TABLE exposure_plan (
    tenant_id    uuid NOT NULL,
    id           uuid NOT NULL,
    programme_id uuid NOT NULL,
    family       text NOT NULL,
    cases        text NOT NULL CHECK (cases ~ '^\d{1,2}(,\d{1,2}){11}$'),
    planned_by   uuid NOT NULL,
    planned_at   timestamptz NOT NULL,
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, planned_by) REFERENCES person (tenant_id, id)
);
CREATE INDEX exposure_plan_newest ON exposure_plan (tenant_id, programme_id, family, planned_at DESC);
SELECT wall_off('exposure_plan');
GRANT SELECT, INSERT ON exposure_plan TO ${runtimeRole};
