package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.people.SettingKey;
import org.scrubline.people.Settings;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Credential;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** Signatures about signed versions, and the settings and rows around them. */
@Component
public class VersionFixture {

    private final VersionSigning signing;
    private final Settings settings;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;

    VersionFixture(VersionSigning signing, Settings settings, JdbcClient jdbc, TransactionTemplate transaction) {
        this.signing = signing;
        this.settings = settings;
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    public void set(Theatre theatre, SettingKey key, int value) {
        UUID programme = theatre.organisation().programme().id();
        SignedIn director = theatre.organisation().join("Director " + key, Role.DIRECTOR);
        theatre.organisation()
                .in(() -> settings.change(director, programme, key, String.valueOf(value), "For this test.")
                        .orThrow());
    }

    public Attempt<VersionSignature> sign(
            Theatre theatre, SignedIn who, RecordEvent event, SignedSheet version, String words) {
        return sign(theatre, who, event, version, words, TestOrganisations.PASSWORD);
    }

    public Attempt<VersionSignature> sign(
            Theatre theatre, SignedIn who, RecordEvent event, SignedSheet version, String words, String password) {
        VersionSigning.Said said = new VersionSigning.Said(event, version.id(), version.contentHash(), words);
        return theatre.organisation().in(() -> signing.sign(who, said, new Credential.Password(password)));
    }

    /** The same with a passkey. */
    public Attempt<VersionSignature> sign(
            Theatre theatre,
            SignedIn who,
            RecordEvent event,
            SignedSheet version,
            String words,
            SoftwarePasskey passkey) {
        Intent intent = Intent.of(event, version.id(), version.contentHash(), words);
        VersionSigning.Said said = new VersionSigning.Said(event, version.id(), version.contentHash(), words);
        return theatre.organisation().in(() -> signing.sign(who, said, answer(passkey, intent)));
    }

    public Attempt<VersionSignature> sign(SignedIn who, VersionSigning.Said said, Credential credential) {
        return signing.sign(who, said, credential);
    }

    /** What a passkey says to this. */
    public static Credential answer(SoftwarePasskey passkey, Intent intent) {
        return new Credential.PasskeyAssertion(passkey.answer(Base64Url.text(CanonicalJson.hashBytes(intent.hash()))));
    }

    /** Message keys of a refusal; empty when it was done. */
    public static List<String> refusals(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }

    public int count(Theatre theatre, String table, UUID record) {
        return number(theatre, "select count(*) from " + table + " where signed_sheet_id = '" + record + "'");
    }

    public int leaves(Theatre theatre, UUID record) {
        return number(theatre, "select count(*) from ledger_leaf where record_id = '" + record + "'");
    }

    /** Entries of the audit trail with this action. */
    public int audited(Theatre theatre, String action) {
        return number(theatre, "select count(*) from audit_entry where action = '" + action + "'");
    }

    private int number(Theatre theatre, String sql) {
        return theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql(sql).query(Integer.class).single()));
    }

    public void update(Theatre theatre, String sql, UUID person) {
        theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql(sql).param("person", person).update()));
    }

    public void endRole(Theatre theatre, SignedIn who) {
        update(
                theatre,
                "update programme_role set ended_at = now() where person_id = :person and ended_at is null",
                who.personId());
    }

    public void closeAccount(Theatre theatre, SignedIn who) {
        update(theatre, "update login_account set enabled = false where id = :person", who.accountId());
    }
}
