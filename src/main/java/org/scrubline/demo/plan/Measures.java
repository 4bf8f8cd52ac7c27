package org.scrubline.demo.plan;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.casework.StepState;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.MeasureKind;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/** Draws a few measured values of a sheet, inside the accepted band unless the step went badly. */
final class Measures {

    private static final double TAKEN = .5;
    private static final int LOW = 2;
    private static final List<String> COUNTED = List.of("TF06-PIECES", "TF07-PIECES");

    private final Map<String, StepState> steps;
    private final Draws draws;
    private final Map<String, BigDecimal> values = new LinkedHashMap<>();

    private Measures(Map<String, StepState> steps, Draws draws) {
        this.steps = steps;
        this.draws = draws;
    }

    static Map<String, BigDecimal> draw(
            Rubric rubric, Map<String, StepState> steps, List<PlannedEvent> events, Draws draws) {
        Measures measures = new Measures(steps, draws);
        rubric.steps().forEach(measures::measure);
        boolean uneven = events.stream().anyMatch(event -> event.code().equals(EventCatalogue.SPONGE_RETAINED));
        if (rubric.find("TF06").isPresent()) {
            measures.count(uneven);
        }
        return measures.values;
    }

    private void count(boolean uneven) {
        int in = 3 + draws.below(4);
        if (uneven || draws.chance(TAKEN)) {
            values.put(COUNTED.get(0), BigDecimal.valueOf(in));
            values.put(COUNTED.get(1), BigDecimal.valueOf(uneven ? in - 1 : in));
        }
    }

    private void measure(Step step) {
        if (steps.get(step.code()) instanceof StepState.Scored scored) {
            for (Measure measure : step.measures()) {
                if (draws.chance(TAKEN)) {
                    take(measure, scored.level());
                }
            }
        }
    }

    private void take(Measure measure, int level) {
        BigDecimal from = measure.acceptFrom();
        BigDecimal to = measure.acceptTo();
        BigDecimal size = measure.stepSize();
        if (measure.kind() == MeasureKind.YES_NO) {
            values.put(measure.code(), level <= LOW ? BigDecimal.ZERO : BigDecimal.ONE);
        } else if (from != null && to != null && size != null && to.compareTo(from) > 0) {
            double share = level <= LOW ? 1.2 : draws.uniform();
            double value = from.doubleValue() + share * to.subtract(from).doubleValue();
            values.put(measure.code(), rounded(value, size));
        }
    }

    private static BigDecimal rounded(double value, BigDecimal size) {
        return BigDecimal.valueOf(value)
                .divide(size, 0, RoundingMode.HALF_UP)
                .multiply(size)
                .stripTrailingZeros();
    }
}
