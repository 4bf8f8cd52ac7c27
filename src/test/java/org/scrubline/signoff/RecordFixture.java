package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Versions.Signature;
import org.scrubline.support.TestOrganisations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** What people do with signed records, each with a fresh password where one is asked for. */
@Component
public class RecordFixture {

    public static final String REASON = "The level of one step was mistyped on the tablet.";

    private final Versions versions;
    private final Voids voids;
    private final Contests contests;
    private final Signing signing;
    private final Sheets sheets;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;

    RecordFixture(
            Versions versions,
            Voids voids,
            Contests contests,
            Signing signing,
            Sheets sheets,
            JdbcClient jdbc,
            TransactionTemplate transaction) {
        this.versions = versions;
        this.voids = voids;
        this.contests = contests;
        this.signing = signing;
        this.sheets = sheets;
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    /** The same below the credential check: what a desk is handed. */
    static Spoken said(String text) {
        return new Spoken(text, new Recognised.ByPassword(new UUID(0, 0)));
    }

    public static Signature signature(String text) {
        return Signature.byPassword(text, TestOrganisations.PASSWORD);
    }

    /** Ends every role of this person. */
    public void leave(Theatre theatre, SignedIn who) {
        theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql("update programme_role set ended_at = now() where person_id = :person")
                                .param("person", who.personId())
                                .update()));
    }

    public RecordHistory history(Theatre theatre, SignedIn who, UUID record) {
        return theatre.organisation().in(() -> versions.history(who, record));
    }

    public Attempt<UUID> open(Theatre theatre, SignedIn who, UUID record) {
        return theatre.organisation().in(() -> versions.open(who, record, REASON));
    }

    public void drop(Theatre theatre, SignedIn who, UUID record) {
        theatre.organisation().in(() -> {
            versions.drop(who, record);
            return record;
        });
    }

    public void change(Theatre theatre, SignedIn who, UUID sheet, SheetChange change) {
        theatre.organisation().in(() -> {
            Sheet open = sheets.openFor(who, sheet);
            return sheets.change(who, sheet, open.lockVersion(), change).orThrow();
        });
    }

    /** The next version with one change in it. */
    public SignedSheet newVersion(Theatre theatre, SignedIn who, SignedSheet record, SheetChange change) {
        UUID sheet = open(theatre, who, record.id()).orThrow();
        change(theatre, who, sheet, change);
        return theatre.organisation()
                .in(() -> signing.signWithoutCredential(who, sheet).orThrow());
    }

    public Attempt<Statement> askVoid(Theatre theatre, SignedIn who, UUID record) {
        return theatre.organisation()
                .in(() -> voids.ask(
                        who, record, VoidGround.WRONG_TRAINEE, signature("This case was another trainee’s case.")));
    }

    public Attempt<Statement> decideVoid(Theatre theatre, SignedIn who, UUID record, boolean confirm) {
        return theatre.organisation()
                .in(() -> voids.decide(who, record, confirm, signature("I looked at the theatre list of that day.")));
    }

    public Attempt<Statement> contest(Theatre theatre, SignedIn who, UUID record) {
        return theatre.organisation()
                .in(() -> contests.open(
                        who, record, List.of("TF09"), signature("I did this step alone, start to finish.")));
    }

    public Attempt<Statement> reply(Theatre theatre, SignedIn who, UUID contest) {
        return theatre.organisation()
                .in(() -> contests.reply(who, contest, signature("I held the flap for most of this step.")));
    }

    public Attempt<Statement> nameReviewer(Theatre theatre, SignedIn director, UUID contest, SignedIn reviewer) {
        return theatre.organisation()
                .in(() -> contests.nameReviewer(director, contest, reviewer.personId(), signature("")));
    }

    public Attempt<Statement> decide(Theatre theatre, SignedIn reviewer, UUID contest, boolean upheld) {
        return theatre.organisation()
                .in(() -> contests.decide(
                        reviewer, contest, upheld, signature("The video of the case settles this step.")));
    }

    public Attempt<Statement> withdraw(Theatre theatre, SignedIn trainee, UUID contest) {
        return theatre.organisation().in(() -> contests.withdraw(trainee, contest, signature("")));
    }

    /** A contest of this record with its reply and its reviewer. */
    public UUID inReview(Theatre theatre, UUID record, SignedIn director, SignedIn reviewer) {
        UUID contest = contest(theatre, theatre.trainee(), record).orThrow().id();
        reply(theatre, theatre.supervisor(), contest).orThrow();
        nameReviewer(theatre, director, contest, reviewer).orThrow();
        return contest;
    }

    public ContestFile read(Theatre theatre, SignedIn who, UUID contest) {
        return theatre.organisation().in(() -> contests.read(who, contest));
    }
}
