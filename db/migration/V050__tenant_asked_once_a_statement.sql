-- The policy of a walled table asked for the organisation of the transaction once a row. As a sub-select it is asked once
-- a statement: reading the steps of a large programme spent more time on the question than on the rows.

CREATE OR REPLACE FUNCTION wall_off(target regclass) RETURNS void
    LANGUAGE plpgsql AS
$$
BEGIN
    EXECUTE format('ALTER TABLE %s ENABLE ROW LEVEL SECURITY', target);
    EXECUTE format('ALTER TABLE %s FORCE ROW LEVEL SECURITY', target);
    EXECUTE format(
        'CREATE POLICY own_organisation ON %s '
        'USING (tenant_id = (SELECT NULLIF(current_setting(''scrubline.tenant'', true), '''')::uuid)) '
        'WITH CHECK (tenant_id = (SELECT NULLIF(current_setting(''scrubline.tenant'', true), '''')::uuid))', target);
END
$$;

DO
$$
DECLARE
    walled regclass;
BEGIN
    FOR walled IN
        SELECT polrelid FROM pg_policy WHERE polname = 'own_organisation'
    LOOP
        EXECUTE format(
            'ALTER POLICY own_organisation ON %s '
            'USING (tenant_id = (SELECT NULLIF(current_setting(''scrubline.tenant'', true), '''')::uuid)) '
            'WITH CHECK (tenant_id = (SELECT NULLIF(current_setting(''scrubline.tenant'', true), '''')::uuid))', walled);
    END LOOP;
END
$$;
