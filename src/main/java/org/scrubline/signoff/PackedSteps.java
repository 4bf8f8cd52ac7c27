package org.scrubline.signoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.StepState;
import org.scrubline.signoff.SheetContent.StepLine;
import org.scrubline.signoff.SignedSheet.SignedStep;

/**
 * Reads the steps of sheets that the database packed into one text each: {@code CODE critical STATE level cause} with
 * single spaces, {@code -} for what is not there, and commas between steps. Sheets of a programme say the same few things
 * over and over, so each is made once.
 */
final class PackedSteps {

    private static final String ABSENT = "-";

    private final Map<UUID, Map<String, Integer>> places;
    private final Map<String, SignedStep> said = new HashMap<>();

    /** For rubric versions whose steps stand in these places. */
    PackedSteps(Map<UUID, Map<String, Integer>> places) {
        this.places = places;
    }

    /** In the order of the rubric; a step it does not list comes last. */
    List<SignedStep> read(UUID rubricVersion, String packed) {
        List<SignedStep> steps = new ArrayList<>();
        for (int from = 0; from < packed.length(); ) {
            int comma = packed.indexOf(',', from);
            int to = comma < 0 ? packed.length() : comma;
            steps.add(said.computeIfAbsent(packed.substring(from, to), PackedSteps::step));
            from = to + 1;
        }
        Map<String, Integer> place = places.getOrDefault(rubricVersion, Map.of());
        steps.sort(Comparator.comparingInt((SignedStep step) -> place.getOrDefault(step.stepCode(), Integer.MAX_VALUE))
                .thenComparing(SignedStep::stepCode));
        return steps;
    }

    private static SignedStep step(String packed) {
        String[] parts = packed.split(" ", -1);
        StepLine line =
                new StepLine(parts[0], parts[1].equals("true"), parts[2], level(parts[3]), cause(parts[4]), null);
        return new SignedStep(line.code(), line.critical(), line.said());
    }

    private static @Nullable Integer level(String part) {
        return part.equals(ABSENT) ? null : Integer.valueOf(part);
    }

    private static StepState.BySupervisor.@Nullable Cause cause(String part) {
        return part.equals(ABSENT) ? null : StepState.BySupervisor.Cause.valueOf(part);
    }
}
