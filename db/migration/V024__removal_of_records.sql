-- Signed records leave when their term is over: two people say so, a tombstone lists each entry of the ledger whose rows go,
-- and a function of the owner removes exactly those. The server itself still cannot remove anything signed.

CREATE TABLE removal_request (
    tenant_id      uuid NOT NULL,
    id             uuid NOT NULL,
    programme_id   uuid NOT NULL,
    trainee_id     uuid NOT NULL,
    reason         text NOT NULL CHECK (reason <> ''),
    asked_by       uuid NOT NULL,
    asked_name     text NOT NULL,
    asked_role     text NOT NULL,
    asked_at       timestamptz NOT NULL,
    credential     text CHECK (credential IN ('PASSWORD', 'PASSKEY')),
    assertion_hash text CHECK (assertion_hash ~ '^[0-9a-f]{64}$'),
    PRIMARY KEY (tenant_id, id),
    FOREIGN KEY (tenant_id, programme_id) REFERENCES programme (tenant_id, id),
    FOREIGN KEY (tenant_id, trainee_id) REFERENCES person (tenant_id, id),
    FOREIGN KEY (tenant_id, asked_by) REFERENCES person (tenant_id, id)
);
CREATE INDEX removal_request_trainee ON removal_request (tenant_id, programme_id, trainee_id);
SELECT wall_off('removal_request');
GRANT SELECT, INSERT ON removal_request TO ${runtimeRole};

CREATE TABLE record_removal (
    tenant_id      uuid NOT NULL,
    id             uuid NOT NULL,
    request_id     uuid NOT NULL,
    asked_name     text NOT NULL,
    removed_by     uuid NOT NULL,
    removed_name   text NOT NULL,
    removed_role   text NOT NULL,
    removed_at     timestamptz NOT NULL,
    record_years   integer NOT NULL,
    records        integer NOT NULL CHECK (records > 0),
    credential     text CHECK (credential IN ('PASSWORD', 'PASSKEY')),
    assertion_hash text CHECK (assertion_hash ~ '^[0-9a-f]{64}$'),
    PRIMARY KEY (tenant_id, id),
    UNIQUE (tenant_id, request_id),
    FOREIGN KEY (tenant_id, request_id) REFERENCES removal_request (tenant_id, id),
    FOREIGN KEY (tenant_id, removed_by) REFERENCES person (tenant_id, id)
);
SELECT wall_off('record_removal');
GRANT SELECT, INSERT ON record_removal TO ${runtimeRole};

-- What stays of each: which it was, and the hash of its content where it had one.
CREATE TABLE removed_record (
    tenant_id    uuid NOT NULL,
    removal_id   uuid NOT NULL,
    kind         text NOT NULL,
    record_id    uuid NOT NULL,
    content_hash text,
    PRIMARY KEY (tenant_id, removal_id, kind, record_id),
    FOREIGN KEY (tenant_id, removal_id) REFERENCES record_removal (tenant_id, id)
);
SELECT wall_off('removed_record');
GRANT SELECT, INSERT ON removed_record TO ${runtimeRole};

-- That a record was opened to a visitor is evidence and outlives the record.
ALTER TABLE visitor_record DROP CONSTRAINT visitor_record_tenant_id_signed_sheet_id_fkey;

-- Everything in the ledger that is about signed sheets of one trainee in one programme of the organisation in scope.
CREATE FUNCTION evidence_of_trainee(programme uuid, trainee uuid)
    RETURNS TABLE (kind text, record_id uuid, content_hash text)
    LANGUAGE sql STABLE AS
$$
    WITH tenant AS (
        SELECT NULLIF(current_setting('scrubline.tenant', true), '')::uuid AS id
    ), version AS (
        SELECT s.tenant_id, s.id, s.sheet_id, s.content_hash
        FROM signed_sheet s, tenant t
        WHERE s.tenant_id = t.id AND s.programme_id = programme AND s.trainee_id = trainee
    ), sheet AS (
        SELECT DISTINCT tenant_id, sheet_id FROM version
    ), own (kind, id, content_hash) AS (
        SELECT 'SIGNATURE', id, content_hash FROM version
        UNION ALL
        SELECT 'COUNTERSIGNATURE', c.id, c.content_hash
        FROM countersignature c JOIN version v ON v.tenant_id = c.tenant_id AND v.id = c.signed_sheet_id
        UNION ALL
        SELECT 'ACKNOWLEDGEMENT', a.id, a.content_hash
        FROM acknowledgement a JOIN version v ON v.tenant_id = a.tenant_id AND v.id = a.signed_sheet_id
        UNION ALL
        SELECT 'LATE_RELEASE', l.id, NULL FROM late_release l JOIN sheet USING (tenant_id, sheet_id)
        UNION ALL
        SELECT 'REMARK', r.id, NULL FROM sheet_remark r JOIN sheet USING (tenant_id, sheet_id)
        UNION ALL
        SELECT 'VERSION_DELEGATE', d.id, d.content_hash FROM version_delegate d JOIN sheet USING (tenant_id, sheet_id)
        UNION ALL
        SELECT 'VOID_REQUEST', r.id, r.content_hash FROM void_request r JOIN sheet USING (tenant_id, sheet_id)
        UNION ALL
        SELECT 'VOID_DECISION', d.id, d.content_hash FROM void_decision d JOIN sheet USING (tenant_id, sheet_id)
        UNION ALL
        SELECT 'CONTEST', c.id, c.content_hash FROM contest c JOIN sheet USING (tenant_id, sheet_id)
        UNION ALL
        SELECT 'CONTEST_STEP', p.id, p.content_hash
        FROM contest_step p
        JOIN contest c ON c.tenant_id = p.tenant_id AND c.id = p.contest_id
        JOIN sheet s ON s.tenant_id = c.tenant_id AND s.sheet_id = c.sheet_id
    )
    SELECT kind, id, content_hash FROM own
    UNION ALL
    SELECT 'ASSERTION', a.id, NULL
    FROM signature_assertion a
    JOIN tenant t ON t.id = a.tenant_id
    JOIN own o ON o.kind = a.record_kind AND o.id = a.record_id
$$;

-- Runs with the owner's rights, so it trusts nobody: everything that allows a removal is read here again.
CREATE FUNCTION remove_records(removal uuid) RETURNS integer
    LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS
$$
DECLARE
    tenant  uuid := NULLIF(current_setting('scrubline.tenant', true), '')::uuid;
    stone   record_removal;
    asked   removal_request;
    years   integer;
    since   timestamptz;
    sheets  uuid[];
    records uuid[];
BEGIN
    SELECT * INTO stone FROM record_removal WHERE tenant_id = tenant AND id = removal;
    IF NOT FOUND THEN
        RAISE EXCEPTION 'there is no removal %', removal;
    END IF;
    SELECT * INTO STRICT asked FROM removal_request WHERE tenant_id = tenant AND id = stone.request_id;
    IF asked.asked_by = stone.removed_by THEN
        RAISE EXCEPTION 'removal %: one person alone removes nothing', removal;
    END IF;
    IF (SELECT count(DISTINCT person_id)
        FROM programme_role
        WHERE tenant_id = tenant AND programme_id = asked.programme_id AND ended_at IS NULL
          AND role IN ('DIRECTOR', 'ADMINISTRATOR') AND person_id IN (asked.asked_by, stone.removed_by)) <> 2 THEN
        RAISE EXCEPTION 'removal %: both must direct or administer the programme', removal;
    END IF;
    IF asked.trainee_id IN (asked.asked_by, stone.removed_by) THEN
        RAISE EXCEPTION 'removal %: nobody removes their own records', removal;
    END IF;
    IF EXISTS (SELECT FROM record_hold
               WHERE tenant_id = tenant AND trainee_id = asked.trainee_id AND ended_at IS NULL) THEN
        RAISE EXCEPTION 'removal %: the records are under a hold', removal;
    END IF;
    years := coalesce((SELECT record_years FROM retention_setting
                       WHERE tenant_id = tenant AND programme_id = asked.programme_id
                       ORDER BY set_at DESC, id DESC LIMIT 1), 6);
    -- The end of training, or the newest signature when that is later: the role is a row the server may end.
    SELECT greatest(
        (SELECT max(coalesce(ended_at, 'infinity')) FROM programme_role
         WHERE tenant_id = tenant AND programme_id = asked.programme_id AND person_id = asked.trainee_id
           AND role = 'TRAINEE'),
        (SELECT max(signed_at) FROM signed_sheet
         WHERE tenant_id = tenant AND programme_id = asked.programme_id AND trainee_id = asked.trainee_id))
    INTO since;
    IF since IS NULL OR since = 'infinity' OR since + make_interval(years => years) > now() THEN
        RAISE EXCEPTION 'removal %: the term is not over', removal;
    END IF;
    IF EXISTS (SELECT kind, record_id, content_hash FROM evidence_of_trainee(asked.programme_id, asked.trainee_id)
               EXCEPT SELECT kind, record_id, content_hash FROM removed_record
                      WHERE tenant_id = tenant AND removal_id = removal)
       OR EXISTS (SELECT kind, record_id, content_hash FROM removed_record
                  WHERE tenant_id = tenant AND removal_id = removal
                  EXCEPT
                  SELECT kind, record_id, content_hash
                  FROM evidence_of_trainee(asked.programme_id, asked.trainee_id)) THEN
        RAISE EXCEPTION 'removal %: the tombstone does not list exactly what goes', removal;
    END IF;

    SELECT array_agg(DISTINCT sheet_id), array_agg(id) INTO sheets, records
    FROM signed_sheet
    WHERE tenant_id = tenant AND programme_id = asked.programme_id AND trainee_id = asked.trainee_id;
    DELETE FROM signature_assertion a USING removed_record r
    WHERE a.tenant_id = tenant AND r.tenant_id = tenant AND r.removal_id = removal
      AND r.kind = 'ASSERTION' AND r.record_id = a.id;
    DELETE FROM contest_step p USING contest c
    WHERE p.tenant_id = tenant AND c.tenant_id = tenant AND c.id = p.contest_id AND c.sheet_id = ANY (sheets);
    DELETE FROM contest WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM void_decision WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM void_request WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM version_delegate WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM version_draft WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM countersignature WHERE tenant_id = tenant AND signed_sheet_id = ANY (records);
    DELETE FROM acknowledgement WHERE tenant_id = tenant AND signed_sheet_id = ANY (records);
    DELETE FROM countersign_reason WHERE tenant_id = tenant AND signed_sheet_id = ANY (records);
    DELETE FROM signed_event WHERE tenant_id = tenant AND signed_sheet_id = ANY (records);
    DELETE FROM signed_step WHERE tenant_id = tenant AND signed_sheet_id = ANY (records);
    DELETE FROM signed_sheet WHERE tenant_id = tenant AND id = ANY (records);
    DELETE FROM late_release WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM sheet_remark WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM sheet_tap WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM sheet_event WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM sheet_measure WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM sheet_step WHERE tenant_id = tenant AND sheet_id = ANY (sheets);
    DELETE FROM score_sheet WHERE tenant_id = tenant AND id = ANY (sheets);
    RETURN cardinality(records);
END
$$;
REVOKE ALL ON FUNCTION remove_records(uuid), evidence_of_trainee(uuid, uuid) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION remove_records(uuid), evidence_of_trainee(uuid, uuid) TO ${runtimeRole};

-- A sheet that is not open goes only once its signed versions went, and these only by the function above.
CREATE OR REPLACE FUNCTION only_open_sheets_go() RETURNS trigger
    LANGUAGE plpgsql AS
$$
BEGIN
    IF OLD.state <> 'OPEN'
       AND NOT EXISTS (SELECT FROM record_removal r
                       JOIN removal_request q ON q.tenant_id = r.tenant_id AND q.id = r.request_id
                       WHERE r.tenant_id = OLD.tenant_id AND q.trainee_id = OLD.trainee_id) THEN
        RAISE EXCEPTION 'a sheet in state % stays', OLD.state;
    END IF;
    RETURN OLD;
END
$$;
