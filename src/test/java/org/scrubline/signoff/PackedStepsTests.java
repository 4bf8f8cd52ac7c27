package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.StepState;
import org.scrubline.signoff.SignedSheet.SignedStep;

class PackedStepsTests {

    private static final UUID VERSION = UUID.fromString("00000000-0000-4000-8000-000000000001");
    private static final UUID OTHER = UUID.fromString("00000000-0000-4000-8000-000000000002");

    private final PackedSteps steps =
            new PackedSteps(Map.of(VERSION, Map.of("TF02", 1, "TF01", 2, "TF03", 3, "TF04", 4)));

    @Test
    void everyStateComesBackInTheOrderOfTheRubricAndAnUnknownStepLast() {
        assertThat(steps.read(
                        VERSION,
                        "AA09 false SCORED 1 -,TF01 true SCORED 4 -,TF02 false NOT_SEEN - -,"
                                + "TF03 true BY_SUPERVISOR - AFTER_TAKEOVER,TF04 false NOT_PART - -"))
                .containsExactly(
                        new SignedStep("TF02", false, new StepState.NotSeen()),
                        new SignedStep("TF01", true, new StepState.Scored(4)),
                        new SignedStep(
                                "TF03", true, new StepState.BySupervisor(StepState.BySupervisor.Cause.AFTER_TAKEOVER)),
                        new SignedStep("TF04", false, new StepState.NotPart()),
                        new SignedStep("AA09", false, new StepState.Scored(1)));
    }

    @Test
    void stepsOfAVersionNobodyKnowsStandInTheOrderOfTheirCodes() {
        assertThat(steps.read(OTHER, "TF02 true SCORED 5 -,TF01 true SCORED 2 -"))
                .extracting(SignedStep::stepCode)
                .containsExactly("TF01", "TF02");
    }
}
