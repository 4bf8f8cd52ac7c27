-- What the planner knows about the tables, gathered by their owner: the server's role owns nothing and may not. Needed where
-- much is written in one transaction, which nothing outside can see yet: a plan made over an empty table looks for a row
-- by its organisation alone, and reads all of it.
CREATE FUNCTION gather_statistics() RETURNS void
    LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS
$$
DECLARE
    target regclass;
BEGIN
    FOR target IN
        SELECT oid
        FROM pg_class
        WHERE relnamespace = 'public'::regnamespace
          AND relkind = 'r'
          AND relowner = current_user::regrole
        ORDER BY oid
    LOOP
        EXECUTE format('ANALYZE %s', target);
    END LOOP;
END
$$;
REVOKE ALL ON FUNCTION gather_statistics() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION gather_statistics() TO ${runtimeRole};
