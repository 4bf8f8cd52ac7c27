package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.scrubline.signoff.CountersignReason.BLOCKING_EVENT;
import static org.scrubline.signoff.CountersignReason.FIRST_INDEPENDENT;
import static org.scrubline.signoff.CountersignReason.NEW_SCORER;
import static org.scrubline.signoff.RecordEvent.COUNTERSIGNED;
import static org.scrubline.signoff.RecordEvent.COUNTERSIGN_REFUSED;
import static org.scrubline.signoff.VersionFixture.refusals;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.people.SettingKey;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Credential;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.TakeoverReason;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/** Names beginning with a letter and a number follow the project's lists of signature requirements and events. */
@ScrublineTest
class CountersignTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    VersionFixture versions;

    @Autowired
    VersionSigning signing;

    @Autowired
    Signing firstSigning;

    @Autowired
    SignedSheets sheets;

    @Autowired
    People people;

    @Autowired
    Ledger ledger;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedIn second;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
        second = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
    }

    @Test
    void theReasonsStandInsideTheSignedContent() {
        SignedSheet signed = signed();
        assertThat(reasons(signed)).containsExactly(NEW_SCORER, FIRST_INDEPENDENT);
        assertThat(signed.content()).contains("\"countersign\":[\"NEW_SCORER\",\"FIRST_INDEPENDENT\"]");
        assertThat(versions.count(theatre, "countersign_reason", signed.id())).isEqualTo(2);
        assertThat(read(signed).marks().awaitingCountersignature()).isTrue();
    }

    @Test
    void aScorerIsNewUntilTheNumberOfEarlierSheetsIsReached() {
        versions.set(theatre, SettingKey.NEW_SCORER_UNTIL, 2);
        assertThat(reasons(signed())).contains(NEW_SCORER);
        assertThat(reasons(signed())).containsExactly(NEW_SCORER);
        assertThat(reasons(signed())).isEmpty();
    }

    @Test
    void aChangedSettingJudgesNothingAgain() {
        SignedSheet before = signed();
        versions.set(theatre, SettingKey.NEW_SCORER_UNTIL, 0);
        assertThat(reasons(read(before))).contains(NEW_SCORER);
        assertThat(read(before).marks().awaitingCountersignature()).isTrue();
    }

    @Test
    void anEventThatBlocksNeedsASecondSignatureAndOneThatDoesNotNeedsNone() {
        versions.set(theatre, SettingKey.NEW_SCORER_UNTIL, 0);
        assertThat(reasons(withTakeover(TakeoverReason.SAFETY))).containsExactly(BLOCKING_EVENT);
        assertThat(reasons(withTakeover(TakeoverReason.TEACHING))).isEmpty();
    }

    @Test
    void onlyTheFirstIndependentOfATraineeNeedsIt() {
        versions.set(theatre, SettingKey.NEW_SCORER_UNTIL, 0);
        assertThat(reasons(signed())).containsExactly(FIRST_INDEPENDENT);
        assertThat(reasons(signed())).isEmpty();
    }

    @Test
    void aRecordThatNeedsNoneHasTheSameFormAsOneOfBefore() {
        versions.set(theatre, SettingKey.NEW_SCORER_UNTIL, 0);
        signed();
        SignedSheet plain = signed();
        assertThat(plain.content()).doesNotContain("\"countersign\"", "\"release\"", "\"device\"");
        assertThat(CanonicalJson.of(SignedContent.read(plain.content()))).isEqualTo(plain.content());
        assertThatThrownBy(() -> versions.sign(theatre, second, COUNTERSIGNED, plain, ""))
                .as("nobody is asked, so nobody else may read it")
                .isInstanceOf(NotFound.class);
    }

    @Test
    void e9TheCountersignatureHoldsNameRoleTimeZoneAndMeaningInItsSignedBytes() {
        SignedSheet signed = signed();
        VersionSignature signature =
                versions.sign(theatre, second, COUNTERSIGNED, signed, "").orThrow();

        VersionSignatureContent content = VersionSignatureContent.read(signature.content());
        assertThat(content.signer().name()).isEqualTo("Ottilie Brannock");
        assertThat(content.signer().role()).isEqualTo("SUPERVISOR");
        assertThat(content.signer().meaning()).isEqualTo("I countersign");
        assertThat(content.signedZone().getId()).isEqualTo("Europe/London");
        assertThat(content.record().contentHash()).isEqualTo(signed.contentHash());
        assertThat(signature.contentHash()).isEqualTo(CanonicalJson.sha256(signature.content()));
        assertThat(theatre.organisation().in(() -> ledger.find(LeafKind.COUNTERSIGNATURE, signature.id())))
                .isPresent();
        assertThat(read(signed).marks().awaitingCountersignature()).isFalse();
        assertThat(read(signed).content()).as("the version itself is untouched").isEqualTo(signed.content());
    }

    @Test
    void g9TheScorerAndTheTraineeCannotCountersign() {
        SignedSheet signed = signed();
        assertThat(refusals(versions.sign(theatre, theatre.supervisor(), COUNTERSIGNED, signed, "")))
                .containsExactly("signoff.refusal.own-signature");
        assertThat(refusals(versions.sign(theatre, theatre.trainee(), COUNTERSIGNED, signed, "")))
                .contains("signoff.refusal.own-training");
        assertThat(versions.count(theatre, "countersignature", signed.id())).isZero();
        assertThat(versions.audited(theatre, "signature-refused")).isEqualTo(2);
    }

    @Test
    void g9ForSomebodyOfAnotherProgrammeTheRecordIsNotThere() {
        SignedSheet signed = signed();
        SignedIn director = theatre.organisation().join("Corisande Delmarr", Role.ADMINISTRATOR);
        Theatre elsewhere = sheetFixture.theatre(organisations);
        for (SignedIn who : List.of(director, elsewhere.supervisor())) {
            assertThatThrownBy(() -> versions.sign(theatre, who, COUNTERSIGNED, signed, ""))
                    .isInstanceOf(NotFound.class);
        }
        assertThat(versions.count(theatre, "countersignature", signed.id())).isZero();
        assertThat(versions.audited(theatre, "signature-refused"))
                .as("the one of this organisation")
                .isEqualTo(1);
    }

    @Test
    void aConflictWithEitherOfThemBarsCountersigning() {
        SignedSheet signed = signed();
        SignedIn third = theatre.organisation().join("Ludo Karsenmark", Role.SUPERVISOR);
        declare(second, theatre.trainee());
        declare(theatre.supervisor(), third);
        for (SignedIn who : List.of(second, third)) {
            assertThat(theatre.organisation().in(() -> signing.toCountersign(who)))
                    .isEmpty();
            assertThatThrownBy(() -> versions.sign(theatre, who, COUNTERSIGNED, signed, ""))
                    .isInstanceOf(NotFound.class);
        }
        SignedIn fourth = theatre.organisation().join("Ruy Estavane", Role.SUPERVISOR);
        assertThat(theatre.organisation().in(() -> signing.toCountersign(fourth)))
                .extracting(SignedLine::id)
                .containsExactly(signed.id());
        versions.sign(theatre, fourth, COUNTERSIGNED, signed, "").orThrow();
    }

    @Test
    void e5ARoleTakenAwayMeanwhileBarsCountersigning() {
        SignedSheet signed = signed();
        SignedIn asOpened = second;
        versions.endRole(theatre, second);
        assertThatThrownBy(() -> versions.sign(theatre, asOpened, COUNTERSIGNED, signed, ""))
                .isInstanceOf(NotFound.class);
        assertThat(versions.count(theatre, "countersignature", signed.id())).isZero();
    }

    @Test
    void aRefusalIsKeptWithItsReasonAndBlocksNobody() {
        SignedSheet signed = signed();
        assertThat(refusals(versions.sign(theatre, second, COUNTERSIGN_REFUSED, signed, " ")))
                .containsExactly("signoff.refusal.words-empty");
        versions.sign(theatre, second, COUNTERSIGN_REFUSED, signed, "I was not there.")
                .orThrow();
        assertThat(read(signed).marks().awaitingCountersignature()).isTrue();

        SignedIn third = theatre.organisation().join("Ludo Karsenmark", Role.SUPERVISOR);
        versions.sign(theatre, third, COUNTERSIGNED, signed, "").orThrow();
        assertThat(theatre.organisation().in(() -> signing.of(theatre.trainee(), signed.id())))
                .extracting(VersionSignature::event)
                .containsExactly(COUNTERSIGN_REFUSED, COUNTERSIGNED);
    }

    @Test
    void whoComesSecondIsToldSo() {
        SignedSheet signed = signed();
        SignedIn third = theatre.organisation().join("Ludo Karsenmark", Role.SUPERVISOR);
        versions.sign(theatre, second, COUNTERSIGNED, signed, "").orThrow();
        assertThat(refusals(versions.sign(theatre, third, COUNTERSIGNED, signed, "")))
                .containsExactly("signoff.refusal.no-more.COUNTERSIGNED");
        assertThat(versions.count(theatre, "countersignature", signed.id())).isEqualTo(1);
    }

    @Test
    void aWrongPasswordOrAnotherHashSignsNothing() {
        SignedSheet signed = signed();
        assertThat(refusals(versions.sign(theatre, second, COUNTERSIGNED, signed, "", "not the password")))
                .containsExactly("refusal.password.wrong");
        VersionSigning.Said other = new VersionSigning.Said(COUNTERSIGNED, signed.id(), "0".repeat(64), "");
        assertThatThrownBy(() -> theatre.organisation()
                        .in(() -> signing.sign(second, other, new Credential.Password(TestOrganisations.PASSWORD))))
                .isInstanceOf(StaleData.class);
        assertThat(versions.count(theatre, "countersignature", signed.id())).isZero();
    }

    @Test
    void e15FiftyThreadsOfOnePersonGetOneSignatureAndOneLeaf() throws Exception {
        SignedSheet signed = signed();
        VersionSigning.Said said = new VersionSigning.Said(COUNTERSIGNED, signed.id(), signed.contentHash(), "");
        List<UUID> answers = AtOnce.run(() -> theatre.organisation()
                .in(() -> signing.signWithoutCredential(second, said).orThrow().id()));
        assertThat(answers).hasSize(AtOnce.THREADS);
        assertThat(answers.stream().distinct()).hasSize(1);
        assertThat(versions.count(theatre, "countersignature", signed.id())).isEqualTo(1);
        assertThat(versions.leaves(theatre, answers.get(0))).isEqualTo(1);
    }

    @Test
    void e15OfManyPeopleAtOnceOneCountersignsAndTheOthersAreTold() throws Exception {
        SignedSheet signed = signed();
        List<SignedIn> colleagues = List.of(
                second,
                theatre.organisation().join("Ludo Karsenmark", Role.SUPERVISOR),
                theatre.organisation().join("Ruy Estavane", Role.SUPERVISOR));
        VersionSigning.Said said = new VersionSigning.Said(COUNTERSIGNED, signed.id(), signed.contentHash(), "");
        AtomicInteger turn = new AtomicInteger();
        List<List<String>> answers = AtOnce.run(() -> {
            SignedIn who = colleagues.get(turn.getAndIncrement() % colleagues.size());
            return theatre.organisation().in(() -> refusals(signing.signWithoutCredential(who, said)));
        });
        assertThat(answers.stream().distinct())
                .containsExactlyInAnyOrder(List.of(), List.of("signoff.refusal.no-more.COUNTERSIGNED"));
        assertThat(versions.count(theatre, "countersignature", signed.id())).isEqualTo(1);
    }

    @Test
    void g11AClosedAccountSignsNothingMoreAndItsOldSignatureStillVerifies() {
        SignedSheet signed = signed();
        VersionSignature signature =
                versions.sign(theatre, second, COUNTERSIGNED, signed, "").orThrow();
        SignedSheet next = signed();
        versions.closeAccount(theatre, second);

        assertThatThrownBy(() -> versions.sign(theatre, second, COUNTERSIGNED, next, ""))
                .isInstanceOf(NotFound.class);
        VersionSignature stored = theatre.organisation()
                .in(() -> signing.of(theatre.trainee(), signed.id()))
                .get(0);
        assertThat(CanonicalJson.sha256(stored.content()))
                .isEqualTo(stored.contentHash())
                .isEqualTo(signature.contentHash());
        assertThat(stored.recordHash())
                .isEqualTo(CanonicalJson.sha256(read(signed).content()));
    }

    private SignedSheet signed() {
        return fixture.signed(theatre, ended());
    }

    private SignedSheet withTakeover(TakeoverReason reason) {
        UUID sheet = fixture.complete(theatre, ended());
        fixture.change(theatre, sheet, new SheetChange.AddEvent(EventCatalogue.TAKEOVER, "TF12", reason, ""));
        return theatre.organisation()
                .in(() -> firstSigning
                        .signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow());
    }

    private Instant ended() {
        return clock.instant().minus(Duration.ofHours(2));
    }

    private SignedSheet read(SignedSheet signed) {
        return theatre.organisation().in(() -> sheets.byId(signed.id())).orElseThrow();
    }

    private static List<CountersignReason> reasons(SignedSheet signed) {
        return SignedContent.read(signed.content()).countersign();
    }

    private void declare(SignedIn one, SignedIn other) {
        theatre.organisation().in(() -> {
            people.declareConflict(one.personId(), other.personId());
            return true;
        });
    }
}
