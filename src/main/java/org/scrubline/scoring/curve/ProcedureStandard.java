package org.scrubline.scoring.curve;

import java.util.List;
import java.util.Set;

/**
 * A programme's settings for one procedure's curves. All numbers are defaults to be set locally.
 *
 * @param criticalSteps step codes that decide a whole case; without any nothing is ever supported
 * @param curveLevel level the curves are drawn against, 2..K: "no help" is 4 of 5
 * @param stepChance wanted chance per step, the line in the step pictures, strictly between 0 and 1
 * @param assurance wanted probability that the chance of the whole case reaches the standard, strictly between 0 and 1
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
     *
     * @param shownCases scored cases
     * @param shownScorers supervisors who scored
     * @param criticalSeen scores of each critical step
     * @param shownIndex evidence index, 0 to 1
     * @param reportableIndex evidence index from which a number is more than provisional, 0 to 1
     * @param supportCases scored cases
     * @param supportScorers supervisors who scored
     * @param largestShare share of the assessments that one supervisor may give at most, 0 to 1
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

    /**
     * Checks the probabilities and copies the lists. Levels are checked against a scale by {@link
     * CompetencyModel#smooth}.
     *
     * @param criticalSteps copied
     * @param curveLevel not checked here
     * @param stepChance strictly between 0 and 1
     * @param assurance strictly between 0 and 1
     * @param levels copied
     * @param minimums not checked
     * @param pending copied
     * @throws IllegalArgumentException when assurance or step chance is out of its range
     */
    public ProcedureStandard {
        criticalSteps = List.copyOf(criticalSteps);
        levels = List.copyOf(levels);
        pending = Set.copyOf(pending);
        if (!(assurance > 0 && assurance < 1) || !(stepChance > 0 && stepChance < 1)) {
            throw new IllegalArgumentException(
                    "assurance and step chance must lie between 0 and 1, but are " + assurance + " and " + stepChance);
        }
    }

    /**
     * {@return the usual standards for five levels: E2 and E3 at level 3 with chances .8 and .9, E4 at level 4 with .5;
     * curves at level 4, step chance and assurance .8, the usual minimums, nothing pending}
     *
     * @param criticalSteps step codes that decide a whole case
     */
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

    /**
     * {@return the same with these assessments pending}
     *
     * @param assessments ids; they replace those pending so far
     */
    public ProcedureStandard withPending(Set<String> assessments) {
        return new ProcedureStandard(criticalSteps, curveLevel, stepChance, assurance, levels, minimums, assessments);
    }
}
