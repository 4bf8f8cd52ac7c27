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
            new PackedSteps(Map.of(VERSION, Map.of("TF02", 1, "TF01", 2, "TF03", 3, "TF04", 4, "TF05", 5)));

    @Test
    void everyStateComesBackInTheOrderOfTheRubricAndAnUnknownStepLast() {
        assertThat(steps.read(VERSION, "AA09 1,TF01!4,TF02 S,TF03!A,TF05!P,TF04 N"))
                .containsExactly(
                        new SignedStep("TF02", false, new StepState.NotSeen()),
                        new SignedStep("TF01", true, new StepState.Scored(4)),
                        new SignedStep(
                                "TF03", true, new StepState.BySupervisor(StepState.BySupervisor.Cause.AFTER_TAKEOVER)),
                        new SignedStep("TF04", false, new StepState.NotPart()),
                        new SignedStep("TF05", true, new StepState.BySupervisor(StepState.BySupervisor.Cause.PLAN)),
                        new SignedStep("AA09", false, new StepState.Scored(1)));
    }

    @Test
    void stepsOfAVersionNobodyKnowsStandInTheOrderOfTheirCodes() {
        assertThat(steps.read(OTHER, "TF02!5,TF01!2"))
                .extracting(SignedStep::stepCode)
                .containsExactly("TF01", "TF02");
    }
}
