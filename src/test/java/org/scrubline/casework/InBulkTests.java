package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetChange.AddEvent;
import org.scrubline.casework.SheetChange.SetBlankSteps;
import org.scrubline.casework.SheetChange.SetStep;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState.NotSeen;
import org.scrubline.casework.StepState.Scored;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.TakeoverReason;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/** Which steps were answered together with others in one action. */
@ScrublineTest
class InBulkTests {

    @Autowired
    Sheets sheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    Theatre theatre;
    UUID id;

    @BeforeEach
    void openASheet() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.parse("2026-03-12T11:40:00Z"));
    }

    @Test
    void onlyTheBlankStepsOfTheActionAreMarkedAndOneAnsweredAgainIsNot() {
        change(new SetStep("TF03", new Scored(4)));
        assertThat(change(new SetBlankSteps(Phase.EXPOSURE, new NotSeen())).inBulk())
                .containsExactlyInAnyOrder("TF04", "TF05");
        assertThat(change(new SetStep("TF04", new NotSeen())).inBulk())
                .as("the same answer changes nothing")
                .contains("TF04");
        assertThat(change(new SetStep("TF04", new Scored(3))).inBulk()).containsExactly("TF05");
        assertThat(change(new SetStep("TF05", StepState.blank())).inBulk()).isEmpty();
    }

    @Test
    void whatATakeoverLeavesToTheSupervisorIsNoActionOnManySteps() {
        assertThat(change(new AddEvent("TAKEOVER", "TF03", TakeoverReason.TIME, ""))
                        .inBulk())
                .isEmpty();
    }

    private Sheet change(SheetChange change) {
        return theatre.organisation().in(() -> {
            int version = sheets.get(id).lockVersion();
            sheets.change(theatre.supervisor(), id, version, change).orThrow();
            return sheets.get(id);
        });
    }
}
