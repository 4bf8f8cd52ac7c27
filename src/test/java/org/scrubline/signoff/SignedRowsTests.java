package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.casework.Part;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState;
import org.scrubline.casework.StepState.BySupervisor;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.Verdict;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.rubric.TakeoverReason;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** What a signature stores, and that it stays. */
@ScrublineTest
class SignedRowsTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    Signing signing;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    Clock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    Theatre theatre;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
    }

    @Test
    void bothHashesCanBeMadeAgainFromTheStoredText() {
        SignedSheet signed = stored(fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3))));
        SignedContent content = SignedContent.read(signed.content());

        assertThat(CanonicalJson.sha256(CanonicalJson.canonical(signed.content())))
                .isEqualTo(signed.contentHash());
        String reviewed = CanonicalJson.of(content.reviewed());
        assertThat(CanonicalJson.sha256(reviewed)).isEqualTo(content.reviewedHash());
        assertThat(signed.content())
                .as("the reviewed text stands in the record byte for byte")
                .contains("\"reviewed\":" + reviewed + ",");
        assertThat(CanonicalJson.sha256(signed.content().replace("\"level\":4", "\"level\":5")))
                .isNotEqualTo(signed.contentHash());
    }

    @Test
    void nameRoleMeaningAndTheInstantWithItsZoneStandInTheSignedText() {
        SignedSheet signed = stored(fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3))));
        assertThat(signed.content())
                .contains("\"meaning\":\"I observed and scored this case\"")
                .contains("\"name\":\"Ansel Verrin\"")
                .contains("\"role\":\"SUPERVISOR\"")
                .contains("\"signedAt\":\"" + signed.signedAt() + "\"")
                .contains("\"signedZone\":\"Europe/London\"");
    }

    @Test
    void everythingSaidOnTheSheetIsReadBackFromTheRecord() {
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(3)));
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF02", new StepState.NotSeen()));
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF03", new BySupervisor(BySupervisor.Cause.PLAN)));
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF04", new StepState.NotPart()));
        fixture.change(
                theatre, sheet, new SheetChange.AddEvent("TAKEOVER", "TF12", TakeoverReason.SAFETY, "Took the punch."));
        fixture.change(theatre, sheet, new SheetChange.SetFeedback("Calm hands.", "Loosen the suture earlier."));
        SignedSheet signed = theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow());

        SignedSheet read = stored(signed);
        assertThat(read).isEqualTo(signed);
        assertThat(read.steps())
                .contains(
                        new SignedSheet.SignedStep("TF02", critical(read, "TF02"), new StepState.NotSeen()),
                        new SignedSheet.SignedStep(
                                "TF03", critical(read, "TF03"), new BySupervisor(BySupervisor.Cause.PLAN)),
                        new SignedSheet.SignedStep("TF04", critical(read, "TF04"), new StepState.NotPart()),
                        new SignedSheet.SignedStep("TF12", true, new StepState.Scored(1)));
        assertThat(read.events()).containsExactly(new SignedSheet.SignedEvent("TAKEOVER", "TF12", "SAFETY", true));
        assertThat(read.verdict()).isEqualTo(Verdict.NOT_YET_SAFE);
        assertThat(read.criticalFailure()).isTrue();
        assertThat(read.confirmedPart()).isEqualTo(Part.WHOLE_CASE);
        assertThat(read.givenSupervision()).isEqualTo(Supervision.SCRUBBED);
        SheetContent content = SignedContent.read(read.content()).reviewed();
        assertThat(content.strength()).isEqualTo("Calm hands.");
        assertThat(content.nextStep()).isEqualTo("Loosen the suture earlier.");
        assertThat(content.events()).extracting(SheetContent.EventLine::action).containsExactly("Took the punch.");
    }

    @Test
    void recordsAreListedOldestCaseFirstWithTheirOwnSteps() {
        SignedSheet newer = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
        SignedSheet older = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(30)));
        UUID trainee = theatre.trainee().personId();

        assertThat(theatre.organisation().in(() -> signedSheets.ofTrainee(trainee)))
                .containsExactly(older, newer);
        assertThat(theatre.organisation().in(() -> signedSheets.ofTrainee(trainee, "NEEDLING")))
                .isEmpty();
        UUID programme = theatre.organisation().programme().id();
        List<SignedSheet> counted =
                theatre.organisation().in(() -> signedSheets.ofProgramme(programme, older.procedureCode()));
        assertThat(counted)
                .usingRecursiveFieldByFieldElementComparatorIgnoringFields("text")
                .containsExactly(older, newer);
        assertThat(counted)
                .as("read to be counted, without their texts")
                .extracting(SignedSheet::text)
                .containsOnlyNulls();
        assertThat(theatre.organisation().in(() -> signedSheets.ofProgramme(UUID.randomUUID(), older.procedureCode())))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update signed_sheet set late = false",
                "update signed_sheet set content = '{}'",
                "delete from signed_sheet",
                "update signed_step set level = 5",
                "delete from signed_step",
                "update signed_event set blocking = false",
                "delete from signed_event",
                "update sheet_remark set body = ''",
                "delete from sheet_remark",
                "truncate signed_event"
            })
    void theServerItselfMayNotChangeWhatWasSigned(String statement) {
        SignedSheet signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
        assertThatThrownBy(() -> theatre.organisation()
                        .in(() -> transaction.execute(
                                status -> jdbc.sql(statement).update())))
                .rootCause()
                .hasMessageContaining("permission denied");
        assertThat(stored(signed)).isEqualTo(signed);
    }

    private SignedSheet stored(SignedSheet signed) {
        return theatre.organisation().in(() -> signedSheets.byId(signed.id())).orElseThrow();
    }

    private static boolean critical(SignedSheet signed, String code) {
        return signed.steps().stream()
                .filter(step -> step.stepCode().equals(code))
                .findFirst()
                .orElseThrow()
                .critical();
    }
}
