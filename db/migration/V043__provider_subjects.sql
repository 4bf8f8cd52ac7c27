-- Who somebody is at the identity provider of an organisation. The pair of issuer and subject is the key, never a mail
-- address: an address is given to the next person, a subject is not.
CREATE TABLE provider_subject (
    issuer     text NOT NULL,
    subject    text NOT NULL,
    account_id uuid NOT NULL REFERENCES login_account (id),
    linked_at  timestamptz NOT NULL,
    PRIMARY KEY (issuer, subject),
    UNIQUE (issuer, account_id)
);
GRANT SELECT, INSERT, DELETE ON provider_subject TO ${runtimeRole};
