package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.signoff.VersionFixture.refusals;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.Introductions;
import org.scrubline.people.SettingKey;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.RepeatedWrongPassword;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;

/** Authority at the moment of signing. Names beginning with a letter and a number follow the project's own lists. */
@ScrublineTest
@RecordApplicationEvents
class SigningAuthorityTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    VersionFixture versions;

    @Autowired
    Signing signing;

    @Autowired
    SigningStatements statements;

    @Autowired
    Introductions introductions;

    @Autowired
    VersionSigning versionSigning;

    @Autowired
    Rubrics rubrics;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    @Autowired
    ApplicationEvents events;

    Theatre theatre;
    UUID sheet;

    @BeforeEach
    void completeASheet() {
        theatre = sheetFixture.theatre(organisations);
        sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(2)));
    }

    @Test
    void e5AClosedAccountCannotSignWhateverTheSessionStillBelieves() {
        String hash = fixture.preview(theatre, sheet).contentHash();
        versions.closeAccount(theatre, theatre.supervisor());
        assertThat(refusals(sign(hash, TestOrganisations.PASSWORD))).containsExactly("signoff.refusal.closed-account");
        assertThat(refusals(
                        theatre.organisation().in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet))))
                .as("the transaction looks for itself")
                .contains("signoff.refusal.closed-account");
        assertUnsigned();
    }

    @Test
    void e5ASharedLogInPreparesAndNeverSigns() {
        TestOrganisation organisation = theatre.organisation();
        SignedIn desk = organisation.joinShared("Theatre desk", Role.SUPERVISOR);
        Theatre shared = new Theatre(organisation, desk, theatre.trainee());
        UUID prepared = fixture.complete(shared, clock.instant().minus(Duration.ofHours(2)));
        SigningPreview preview = fixture.preview(shared, prepared);
        assertThat(preview.obstacles()).extracting(Refusal::messageKey).containsExactly("signoff.refusal.shared");

        organisation.in(() -> {
            statements.accept(desk);
            return true;
        });
        assertThat(refusals(organisation.in(() -> signing.sign(
                        desk, prepared, preview.contentHash(), new Credential.Password(TestOrganisations.PASSWORD)))))
                .containsExactly("signoff.refusal.shared");
        SignedSheet signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(2)));
        assertThat(organisation.in(() -> signing(desk, signed))).isEmpty();
        assertThat(fixture.read(shared, prepared).state()).isEqualTo(SheetState.OPEN);
    }

    private List<RecordEvent> signing(SignedIn who, SignedSheet signed) {
        return List.copyOf(versionSigning.mayFollow(who, signed));
    }

    @Test
    void e8WithoutTheStatementAcceptedNothingIsSigned() {
        Theatre fresh = theatreOfSomebodyNew();
        UUID open = fixture.complete(fresh, clock.instant().minus(Duration.ofHours(2)));
        String hash = fixture.preview(fresh, open).contentHash();
        Attempt<SignedSheet> refused = fresh.organisation()
                .in(() -> signing.sign(
                        fresh.supervisor(), open, hash, new Credential.Password(TestOrganisations.PASSWORD)));
        assertThat(refusals(refused)).containsExactly("signoff.refusal.statement");
        assertThat(fixture.read(fresh, open).state()).isEqualTo(SheetState.OPEN);

        fresh.organisation().in(() -> {
            statements.accept(fresh.supervisor());
            statements.accept(fresh.supervisor());
            return true;
        });
        assertThat(refusals(fresh.organisation()
                        .in(() -> signing.sign(
                                fresh.supervisor(), open, hash, new Credential.Password(TestOrganisations.PASSWORD)))))
                .isEmpty();
    }

    @Test
    void e8AMissingIntroductionBarsSigningOnlyWhereTheProgrammeAsksForIt() {
        versions.set(theatre, SettingKey.INTRODUCTION_FIRST, 1);
        assertThat(refusals(
                        theatre.organisation().in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet))))
                .containsExactly("signoff.refusal.introduction");
        assertUnsigned();

        SignedIn director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
        theatre.organisation()
                .in(() -> introductions
                        .record(
                                director,
                                theatre.organisation().programme().id(),
                                theatre.supervisor().personId(),
                                LocalDate.of(2026, 1, 12).toString())
                        .orThrow());
        assertThat(refusals(
                        theatre.organisation().in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet))))
                .isEmpty();
    }

    @Test
    void e14FiveWrongPasswordsLeaveASecurityNoteAndKeepTheDraft() {
        String hash = fixture.preview(theatre, sheet).contentHash();
        for (int i = 0; i < 4; i++) {
            sign(hash, "not the password");
        }
        assertThat(events.stream(RepeatedWrongPassword.class)).isEmpty();
        sign(hash, "not the password");
        assertThat(events.stream(RepeatedWrongPassword.class))
                .extracting(RepeatedWrongPassword::accountId)
                .containsExactly(theatre.supervisor().accountId());
        assertThat(versions.audited(theatre, "wrong-passwords")).isEqualTo(1);
        assertThat(refusals(sign(hash, TestOrganisations.PASSWORD))).containsExactly("refusal.password.wait");
        assertUnsigned();
    }

    @Test
    void g15WithTheClockSetBackTheLedgerKeepsTheOrderOfSigning() {
        SignedSheet first = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
        SignedSheet second = clock.at(
                clock.instant().minus(Duration.ofHours(1)),
                () -> fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3))));
        assertThat(second.signedAt()).isBefore(first.signedAt());
        assertThat(leaf(second)).isGreaterThan(leaf(first));
    }

    private long leaf(SignedSheet signed) {
        return theatre.organisation()
                .in(() -> ledger.find(LeafKind.SIGNATURE, signed.id()))
                .orElseThrow()
                .index();
    }

    private Theatre theatreOfSomebodyNew() {
        TestOrganisation organisation = organisations.open();
        SignedIn supervisor = organisation.joinNew("Ansel Verrin", Role.SUPERVISOR);
        SignedIn trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        organisation.in(() -> rubrics.publishLibrary(supervisor.personId()).orThrow());
        return new Theatre(organisation, supervisor, trainee);
    }

    private Attempt<SignedSheet> sign(String hash, String password) {
        return theatre.organisation()
                .in(() -> signing.sign(theatre.supervisor(), sheet, hash, new Credential.Password(password)));
    }

    private void assertUnsigned() {
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.OPEN);
    }
}
