package org.scrubline.casework;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/**
 * The sponge pieces of a case: as many have to come out as went in.
 *
 * @param inStep the step that counts them in
 * @param inCode code of its measure
 * @param in number of pieces; null while not written down
 * @param outStep the step that counts them out
 * @param outCode code of its measure
 * @param out number of pieces; null while not written down
 */
public record PieceCount(
        Step inStep,
        String inCode,
        @Nullable BigDecimal in,
        Step outStep,
        String outCode,
        @Nullable BigDecimal out) {

    private static final String MEASURE = "-PIECES";

    private record Place(Step step, String code) {}

    /** The count of a sheet; empty where the rubric does not count pieces in and out. */
    public static Optional<PieceCount> of(Rubric rubric, Sheet sheet) {
        List<Place> places = rubric.steps().stream()
                .flatMap(step -> step.measures().stream()
                        .filter(measure -> measure.code().endsWith(MEASURE))
                        .map(measure -> new Place(step, measure.code())))
                .toList();
        if (places.size() != 2) {
            return Optional.empty();
        }
        Place in = places.get(0);
        Place out = places.get(1);
        return Optional.of(new PieceCount(
                in.step(),
                in.code(),
                sheet.measures().get(in.code()),
                out.step(),
                out.code(),
                sheet.measures().get(out.code())));
    }

    /** Both are written down and they are not the same. */
    public boolean differs() {
        return in != null && out != null && in.compareTo(out) != 0;
    }

    /** Not both are written down. */
    public boolean unfilled() {
        return in == null || out == null;
    }
}
