package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Part;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.signoff.SignedSheets.Scored;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/** What was scored, asked without reading the sheets, is what reading them says: after each thing that can happen to one. */
@ScrublineTest
class ScoredStepsTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    RecordFixture acts;

    @Autowired
    Signing signing;

    @Autowired
    SignedSheets sheets;

    @Autowired
    Clock clock;

    Theatre theatre;
    Instant ended;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
        ended = clock.instant().minus(Duration.ofHours(3));
    }

    @Test
    void nothingIsScoredBeforeTheFirstSheet() {
        assertThat(scored()).isEqualTo(new Scored(Instant.EPOCH, List.of()));
    }

    @Test
    void aNewVersionCountsInPlaceOfTheOldOne() {
        SignedSheet first = sign("TF09", new StepState.Scored(3));
        assertThat(scored()).isEqualTo(read());
        assertThat(scored().steps()).containsExactly("TF09");
        acts.newVersion(theatre, theatre.supervisor(), first, new SheetChange.SetStep("TF09", new StepState.NotSeen()));
        assertThat(scored()).isEqualTo(read());
        assertThat(scored().steps()).isEmpty();
    }

    @Test
    void aVoidSheetCountsNoLonger() {
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        sign("TF10", new StepState.Scored(4));
        SignedSheet wrong = sign("TF09", new StepState.Scored(3));
        acts.askVoid(theatre, theatre.supervisor(), wrong.id()).orThrow();
        assertThat(scored().steps()).containsExactly("TF09", "TF10");
        acts.decideVoid(theatre, director, wrong.id(), true).orThrow();
        assertThat(scored()).isEqualTo(read());
        assertThat(scored().steps()).containsExactly("TF10");
    }

    @Test
    void assistingCountsNowhere() {
        UUID sheet = fixture.blank(theatre, ended);
        fixture.change(theatre, sheet, new SheetChange.ConfirmRole(Part.ASSISTED, Supervision.SCRUBBED));
        sign(sheet, "TF09", new StepState.Scored(3));
        assertThat(scored()).isEqualTo(read()).isEqualTo(new Scored(Instant.EPOCH, List.of()));
    }

    @Test
    void anotherProgrammeIsAnotherMatter() {
        sign("TF09", new StepState.Scored(3));
        UUID other = theatre.organisation().anotherProgramme().programme().id();
        assertThat(theatre.organisation().in(() -> sheets.scored(other, Procedures.TRAB_FORNIX)))
                .isEqualTo(new Scored(Instant.EPOCH, List.of()));
    }

    private SignedSheet sign(String step, StepState state) {
        UUID sheet = fixture.blank(theatre, ended);
        fixture.confirmRole(theatre, sheet);
        return sign(sheet, step, state);
    }

    private SignedSheet sign(UUID sheet, String step, StepState state) {
        fixture.change(theatre, sheet, new SheetChange.SetStep(step, state));
        fixture.change(theatre, sheet, new SheetChange.SetBlankSteps(null, new StepState.NotSeen()));
        return theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow());
    }

    private UUID programme() {
        return theatre.organisation().programme().id();
    }

    private Scored scored() {
        return theatre.organisation().in(() -> sheets.scored(programme(), Procedures.TRAB_FORNIX));
    }

    private Scored read() {
        List<SignedSheet> counted =
                theatre.organisation().in(() -> sheets.ofProgramme(programme(), Procedures.TRAB_FORNIX)).stream()
                        .filter(sheet -> sheet.confirmedPart() != Part.ASSISTED)
                        .toList();
        return new Scored(
                counted.stream()
                        .map(SignedSheet::signedAt)
                        .max(Instant::compareTo)
                        .orElse(Instant.EPOCH),
                counted.stream()
                        .flatMap(sheet -> sheet.steps().stream())
                        .filter(step -> step.state() instanceof StepState.Scored)
                        .map(SignedSheet.SignedStep::stepCode)
                        .distinct()
                        .sorted()
                        .toList());
    }
}
