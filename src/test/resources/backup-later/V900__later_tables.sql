-- Tables as a later release might add them: with a trigger, a numbered and a computed column.
CREATE TABLE numbered_note (
    tenant_id uuid NOT NULL REFERENCES organisation (tenant_id),
    number    bigint GENERATED ALWAYS AS IDENTITY,
    note      text NOT NULL,
    loud      text GENERATED ALWAYS AS (upper(note)) STORED,
    PRIMARY KEY (tenant_id, number)
);
SELECT wall_off('numbered_note');
GRANT SELECT, INSERT ON numbered_note TO ${runtimeRole};

CREATE FUNCTION note_may_not_be_stored() RETURNS trigger
    LANGUAGE plpgsql AS
$$
BEGIN
    NEW.note := NEW.note || ', seen by the trigger';
    RETURN NEW;
END
$$;
CREATE TRIGGER note_trigger BEFORE INSERT ON numbered_note FOR EACH ROW EXECUTE FUNCTION note_may_not_be_stored();
