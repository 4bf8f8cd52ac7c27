-- What became of an eye after its operation: one row an entry, never changed. An entry that puts another right names it, and
-- the older one stays readable; what no entry replaces holds.
CREATE TABLE outcome_entry (
    tenant_id     uuid NOT NULL,
    id            uuid NOT NULL,
    case_id       uuid NOT NULL,
    -- The order of a case's entries, from 1.
    ordinal       integer NOT NULL CHECK (ordinal >= 1),
    -- The ordinal of the entry put right.
    replaces      integer CHECK (replaces < ordinal),
    kind          text NOT NULL CHECK (kind IN ('BASELINE', 'VISIT', 'NO_VISIT', 'MISTAKE')),
    source        text NOT NULL CHECK (source IN ('CLINIC_LETTER', 'SEEN_MYSELF', 'FROM_ELSEWHERE')),
    entered_by    uuid NOT NULL,
    entered_at    timestamptz NOT NULL,
    -- Day of the measurement or visit, or from which a visit is known not to have been.
    on_day        date,
    iop           numeric(3, 1) CHECK (iop BETWEEN 0 AND 80 AND iop * 2 = trunc(iop * 2)),
    drops         smallint CHECK (drops BETWEEN 0 AND 6),
    -- Lines read on the chart before the operation.
    acuity_lines  smallint CHECK (acuity_lines BETWEEN 0 AND 20),
    -- What nobody wrote down is null.
    chamber       text CHECK (chamber IN ('DEEP', 'SHALLOW', 'FLAT')),
    leak_test     text CHECK (leak_test IN ('DRY', 'LEAKS', 'NOT_DONE')),
    bleb          text CHECK (bleb IN ('SPREAD', 'RAISED', 'WALLED_OFF', 'NONE')),
    effusion      boolean,
    vision        text CHECK (vision IN ('SAME', 'WORSE', 'BETTER')),
    -- Names in the order of the program with a blank between; empty for none.
    care          text,
    more_surgery  boolean,
    light_lost    boolean,
    seen_by       text CHECK (seen_by IN ('OPERATOR', 'OTHER', 'ELSEWHERE')),
    window_name   text CHECK (window_name IN ('D1', 'W1', 'M1', 'M3', 'M6', 'M12')),
    absence       text CHECK (absence IN ('MISSED', 'ELSEWHERE', 'LOST')),
    lost_reason   text CHECK (lost_reason IN ('MOVED', 'NOT_REACHED', 'DECLINED', 'CARE_ELSEWHERE', 'ILL', 'DIED')),
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, case_id, ordinal),
    -- An entry is put right once; what puts it right can be put right in turn.
    UNIQUE (tenant_id, case_id, replaces),
    FOREIGN KEY (tenant_id, case_id) REFERENCES surgical_case (tenant_id, id),
    FOREIGN KEY (tenant_id, case_id, replaces) REFERENCES outcome_entry (tenant_id, case_id, ordinal),
    FOREIGN KEY (tenant_id, entered_by) REFERENCES person (tenant_id, id),
    CHECK ((kind IN ('BASELINE', 'VISIT')) = (iop IS NOT NULL)),
    CHECK ((iop IS NULL) = (drops IS NULL)),
    CHECK ((kind = 'MISTAKE') = (on_day IS NULL)),
    CHECK ((kind = 'VISIT') = (seen_by IS NOT NULL)),
    CHECK ((kind = 'VISIT') = (care IS NOT NULL)),
    CHECK ((kind = 'VISIT') = (more_surgery IS NOT NULL)),
    CHECK ((kind = 'VISIT') = (light_lost IS NOT NULL)),
    CHECK ((kind = 'NO_VISIT') = (absence IS NOT NULL)),
    CHECK ((kind = 'NO_VISIT') = (window_name IS NOT NULL)),
    CHECK (coalesce(absence = 'LOST', false) = (lost_reason IS NOT NULL)),
    CHECK (kind <> 'MISTAKE' OR replaces IS NOT NULL)
);
SELECT wall_off('outcome_entry');
GRANT SELECT, INSERT ON outcome_entry TO ${runtimeRole};
