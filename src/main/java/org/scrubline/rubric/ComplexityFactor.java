package org.scrubline.rubric;

import java.util.List;

/**
 * Something that makes a case harder, riskier to heal or higher in stakes; the three axes stay apart.
 *
 * @param code key of the factor in records
 * @param name as shown
 * @param technicalPoints points on the technical axis, 0 or more; their sum gives the {@link Band}
 * @param healingPoints points on the healing axis, 0 or more; they adjust outcomes, never step scores
 * @param stakes whether it raises who should operate and how early the supervisor steps in; adjusts nothing
 * @param sources keys of {@link Sources}, never empty
 */
public record ComplexityFactor(
        String code, String name, int technicalPoints, int healingPoints, boolean stakes, List<String> sources) {

    public ComplexityFactor {
        sources = List.copyOf(sources);
    }
}
