package org.scrubline.signoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.StepState;
import org.scrubline.signoff.SignedSheet.SignedStep;

/**
 * Reads the steps of sheets that the database packed into one text each: the code of a step, {@code !} when it is critical or
 * a space, and one sign for what was said of it: the level, {@code N} not part of the case, {@code S} not seen, {@code P} by
 * the supervisor as planned or {@code A} after a takeover. Steps are parted by commas. Sheets of a programme say the same few things over
 * and over, so each is made once.
 */
final class PackedSteps {

    private static final Comparator<Placed> IN_ORDER = Comparator.comparingInt(Placed::place)
            .thenComparing(placed -> placed.step().stepCode());

    private final Map<UUID, Map<String, Integer>> places;
    private final Map<UUID, Map<String, Placed>> said = new HashMap<>();

    /** For rubric versions whose steps stand in these places. */
    PackedSteps(Map<UUID, Map<String, Integer>> places) {
        this.places = places;
    }

    /** A step and where its rubric has it; after all others when the rubric does not list it. */
    private record Placed(SignedStep step, int place) {}

    /** In the order of the rubric; a step it does not list comes last. */
    List<SignedStep> read(UUID rubricVersion, String packed) {
        Map<String, Integer> place = places.getOrDefault(rubricVersion, Map.of());
        Map<String, Placed> known = said.computeIfAbsent(rubricVersion, version -> new HashMap<>());
        List<Placed> steps = new ArrayList<>(place.size());
        for (int from = 0; from < packed.length(); ) {
            int comma = packed.indexOf(',', from);
            int to = comma < 0 ? packed.length() : comma;
            steps.add(known.computeIfAbsent(packed.substring(from, to), text -> placed(text, place)));
            from = to + 1;
        }
        steps.sort(IN_ORDER);
        return steps.stream().map(Placed::step).toList();
    }

    private static Placed placed(String packed, Map<String, Integer> places) {
        int said = packed.length() - 1;
        SignedStep step = new SignedStep(
                packed.substring(0, said - 1), packed.charAt(said - 1) == '!', state(packed.charAt(said)));
        return new Placed(step, places.getOrDefault(step.stepCode(), Integer.MAX_VALUE));
    }

    private static StepState state(char said) {
        return switch (said) {
            case 'N' -> new StepState.NotPart();
            case 'S' -> new StepState.NotSeen();
            case 'P' -> new StepState.BySupervisor(StepState.BySupervisor.Cause.PLAN);
            case 'A' -> new StepState.BySupervisor(StepState.BySupervisor.Cause.AFTER_TAKEOVER);
            default -> new StepState.Scored(Character.digit(said, 10));
        };
    }
}
