package org.scrubline.demo.plan;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.scrubline.casework.StepState;

/**
 * What one supervisor says about a case.
 *
 * @param scorer id of the supervisor
 * @param signedAt when it is signed, or would have been
 * @param steps what is said of each step of the rubric, in its order
 * @param measures by code, few or none
 */
public record PlannedSheet(
        String scorer,
        Instant signedAt,
        Map<String, StepState> steps,
        List<PlannedEvent> events,
        Map<String, BigDecimal> measures,
        String strength,
        String nextStep) {

    public PlannedSheet {
        steps = Collections.unmodifiableMap(new LinkedHashMap<>(steps));
        events = List.copyOf(events);
        measures = Collections.unmodifiableMap(new LinkedHashMap<>(measures));
    }

    /** Levels 1 to 5 of the scored steps, in the order of the rubric. */
    public Map<String, Integer> levels() {
        return levels(steps);
    }

    static Map<String, Integer> levels(Map<String, StepState> steps) {
        return steps.entrySet().stream()
                .filter(entry -> entry.getValue() instanceof StepState.Scored)
                .collect(Collectors.toMap(
                        Map.Entry::getKey,
                        entry -> ((StepState.Scored) entry.getValue()).level(),
                        (one, other) -> one,
                        LinkedHashMap::new));
    }
}
