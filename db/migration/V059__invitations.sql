-- A new invitation ends the one before it: the code of a lost letter must open nothing.
GRANT UPDATE (expires_at) ON login_invitation TO ${runtimeRole};

-- Whoever has a log-in in one organisation takes up the invitation of another with it: the person invited is from then on
-- entered with that account, and the account made for the invitation is closed. An account somebody came in with keeps its
-- person for ever: what was signed with it was signed by them.
GRANT UPDATE (account_id) ON person TO ${runtimeRole};

CREATE FUNCTION account_keeps_its_person() RETURNS trigger
    LANGUAGE plpgsql AS
$$
BEGIN
    IF OLD.account_id IS NULL
       OR EXISTS (SELECT 1 FROM login_account WHERE id = OLD.account_id AND password_hash IS NOT NULL)
       OR EXISTS (SELECT 1 FROM provider_subject WHERE account_id = OLD.account_id)
       OR EXISTS (SELECT 1 FROM passkey WHERE account_id = OLD.account_id) THEN
        RAISE EXCEPTION 'account % has been entered and keeps its person', OLD.account_id;
    END IF;
    RETURN NEW;
END
$$;
CREATE TRIGGER account_keeps_its_person
    BEFORE UPDATE OF account_id ON person
    FOR EACH ROW
    WHEN (OLD.account_id IS DISTINCT FROM NEW.account_id)
    EXECUTE FUNCTION account_keeps_its_person();
