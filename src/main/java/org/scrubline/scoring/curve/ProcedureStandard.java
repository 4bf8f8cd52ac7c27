package org.scrubline.scoring.curve;

import java.util.List;
import java.util.Set;

/**
 * A programme's settings for one procedure's curves. All numbers are defaults to be set locally.
 *
 * @param criticalSteps step codes that decide a whole case
 * @param curveLevel level the curves are drawn against: "no help" is 4 of 5
 * @param stepChance wanted chance per step, the line in the step pictures
 * @param assurance wanted probability that the chance of the whole case reaches the standard
 * @param levels the standards, easiest first
 * @param minimums least evidence
 * @param pending assessments that await a second person: they move the curve but count toward no minimum
 */
public record ProcedureStandard(
        List<String> criticalSteps,
        int curveLevel,
        double stepChance,
        double assurance,
        List<LevelStandard> levels,
        Minimums minimums,
        Set<String> pending) {

    /**
     * Least evidence. {@code shown*}: before a modelled number is shown; {@code support*}: before it may support a
     * decision.
     */
    public record Minimums(
            int shownCases,
            int shownScorers,
            int criticalSeen,
            double shownIndex,
            double reportableIndex,
            int supportCases,
            int supportScorers,
            double largestShare) {

        /** 5 cases, 2 scorers, each critical step 3 times, index .5 (.8 reportable); 12 cases, 4 scorers, none above 40 %. */
        public static final Minimums USUAL = new Minimums(5, 2, 3, 0.5, 0.8, 12, 4, 0.4);
    }

    public ProcedureStandard {
        criticalSteps = List.copyOf(criticalSteps);
        levels = List.copyOf(levels);
        pending = Set.copyOf(pending);
        if (!(assurance > 0 && assurance < 1) || !(stepChance > 0 && stepChance < 1)) {
            throw new IllegalArgumentException(
                    "assurance and step chance must lie between 0 and 1, but are " + assurance + " and " + stepChance);
        }
    }

    /** The usual standards for five levels: E2 and E3 at level 3, E4 at level 4. */
    public static ProcedureStandard usual(List<String> criticalSteps) {
        return new ProcedureStandard(
                criticalSteps,
                4,
                0.8,
                0.8,
                List.of(
                        new LevelStandard("E2", 3, 0.8),
                        new LevelStandard("E3", 3, 0.9),
                        new LevelStandard("E4", 4, 0.5)),
                Minimums.USUAL,
                Set.of());
    }

    /** The same with these assessments pending. */
    public ProcedureStandard withPending(Set<String> assessments) {
        return new ProcedureStandard(criticalSteps, curveLevel, stepChance, assurance, levels, minimums, assessments);
    }
}
