package org.scrubline.rubric;

import java.util.List;

/**
 * One observable step of a procedure.
 *
 * @param code key of the step in scores and curves, such as {@code TF09}; keeps its meaning across versions
 * @param name short name
 * @param phase the part of the operation it belongs to
 * @param critical whether the verdict on the case rests on it
 * @param sees what the observer looks for
 * @param measures what can be measured here, possibly nothing
 * @param levels five sentences, index 0 is level 1
 * @param hazards what goes wrong here
 * @param coaching what to say for next time
 * @param sources keys of {@link Sources} the hazards and coaching rest on
 * @param onlyWhenConverted offered only when the case was converted; otherwise not part of it
 */
public record Step(
        String code,
        String name,
        Phase phase,
        boolean critical,
        String sees,
        List<Measure> measures,
        List<String> levels,
        List<String> hazards,
        List<String> coaching,
        List<String> sources,
        boolean onlyWhenConverted) {

    /** How many levels a step has. */
    public static final int LEVELS = 5;

    public Step {
        measures = List.copyOf(measures);
        levels = List.copyOf(levels);
        hazards = List.copyOf(hazards);
        coaching = List.copyOf(coaching);
        sources = List.copyOf(sources);
        if (levels.size() != LEVELS) {
            throw new IllegalArgumentException("Step " + code + " has " + levels.size() + " level sentences, not five");
        }
    }

    /**
     * The sentence of a level.
     *
     * @param level 1 to 5
     * @throws IndexOutOfBoundsException for any other level
     */
    public String sentence(int level) {
        return levels.get(level - 1);
    }
}
