package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.signoff.RecordEvent.ACKNOWLEDGED;
import static org.scrubline.signoff.RecordEvent.NOT_ACKNOWLEDGED;
import static org.scrubline.signoff.VersionFixture.refusals;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/** Names beginning with a letter and a number follow the project's lists of signature requirements and events. */
@ScrublineTest
class AcknowledgeTests {

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
    SignedSheets sheets;

    @Autowired
    Ledger ledger;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedSheet signed;

    @BeforeEach
    void signASheet() {
        theatre = sheetFixture.theatre(organisations);
        signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(2)));
    }

    @Test
    void g8TheCommentIsASignedRecordAndTheScoresStayAsTheyAre() {
        VersionSignature answer = versions.sign(
                        theatre, theatre.trainee(), ACKNOWLEDGED, signed, "The punch slipped; I see why.")
                .orThrow();

        VersionSignatureContent content = VersionSignatureContent.read(answer.content());
        assertThat(content.words()).isEqualTo("The punch slipped; I see why.");
        assertThat(content.signer().meaning()).isEqualTo("I have read this record");
        assertThat(content.signer().role()).isEqualTo("TRAINEE");
        assertThat(content.record().version()).isEqualTo(1);
        assertThat(theatre.organisation().in(() -> ledger.find(LeafKind.ACKNOWLEDGEMENT, answer.id())))
                .isPresent();
        SignedSheet after =
                theatre.organisation().in(() -> sheets.byId(signed.id())).orElseThrow();
        assertThat(after.content()).isEqualTo(signed.content());
        assertThat(after.steps()).isEqualTo(signed.steps());
        assertThat(after.marks()).isEqualTo(signed.marks());
    }

    @Test
    void g8NotAcknowledgingIsARecordedChoiceWithItsReasonAndBlocksNothing() {
        assertThat(refusals(versions.sign(theatre, theatre.trainee(), NOT_ACKNOWLEDGED, signed, "")))
                .containsExactly("signoff.refusal.words-empty");
        versions.sign(theatre, theatre.trainee(), NOT_ACKNOWLEDGED, signed, "This was not my case.")
                .orThrow();
        versions.sign(theatre, theatre.trainee(), ACKNOWLEDGED, signed, "").orThrow();
        assertThat(theatre.organisation().in(() -> signing.of(theatre.supervisor(), signed.id())))
                .extracting(VersionSignature::event)
                .containsExactly(NOT_ACKNOWLEDGED, ACKNOWLEDGED);
    }

    @Test
    void whoHasAcknowledgedCannotTakeItBack() {
        versions.sign(theatre, theatre.trainee(), ACKNOWLEDGED, signed, "").orThrow();
        assertThat(refusals(versions.sign(theatre, theatre.trainee(), NOT_ACKNOWLEDGED, signed, "After all not.")))
                .containsExactly("signoff.refusal.no-more.NOT_ACKNOWLEDGED");
    }

    @Test
    void sayingTheSameAgainAnswersTheFirst() {
        VersionSignature first = versions.sign(theatre, theatre.trainee(), ACKNOWLEDGED, signed, "Read.")
                .orThrow();
        VersionSignature again = versions.sign(theatre, theatre.trainee(), ACKNOWLEDGED, signed, "Read twice.")
                .orThrow();
        assertThat(again).isEqualTo(first);
        assertThat(versions.count(theatre, "acknowledgement", signed.id())).isEqualTo(1);
    }

    @Test
    void nobodyButTheTraineeAnswers() {
        SignedIn director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
        for (SignedIn who : List.of(theatre.supervisor(), director)) {
            assertThat(refusals(versions.sign(theatre, who, ACKNOWLEDGED, signed, "")))
                    .containsExactly("signoff.refusal.not-the-trainee");
        }
        assertThat(versions.count(theatre, "acknowledgement", signed.id())).isZero();
    }

    @Test
    void aTooLongCommentIsRefusedBeforeAnyPasswordIsLookedAt() {
        assertThat(refusals(versions.sign(
                        theatre, theatre.trainee(), ACKNOWLEDGED, signed, "é".repeat(1001), "not the password")))
                .containsExactly("refusal.text.length");
        assertThat(refusals(versions.sign(
                        theatre, theatre.trainee(), ACKNOWLEDGED, signed, "é".repeat(1000), "not the password")))
                .containsExactly("refusal.password.wrong");
        assertThat(versions.count(theatre, "acknowledgement", signed.id())).isZero();
    }

    @Test
    void e15FiftyThreadsGetOneAnswerAndOneLeaf() throws Exception {
        VersionSigning.Said said = new VersionSigning.Said(ACKNOWLEDGED, signed.id(), signed.contentHash(), "Read.");
        List<UUID> answers = AtOnce.run(() -> theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.trainee(), said)
                        .orThrow()
                        .id()));
        assertThat(answers.stream().distinct()).hasSize(1);
        assertThat(versions.count(theatre, "acknowledgement", signed.id())).isEqualTo(1);
        assertThat(versions.leaves(theatre, answers.get(0))).isEqualTo(1);
    }
}
