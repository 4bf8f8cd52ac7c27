package org.scrubline.progress;

import java.util.ArrayList;
import java.util.List;

/**
 * Whether there is enough to print a share and a chart at all, and enough for a proposal to a committee. The numbers
 * are this project's defaults; raw counts are printed whatever the gates say.
 *
 * @param shown what is short for printing: 5 cases, 2 scorers, each critical step scored 3 times
 * @param supports what is short, beyond that, for a proposal: 12 cases, 4 scorers, none with more than 40 % of the sheets
 */
public record Gates(List<Shortfall> shown, List<Shortfall> supports) {

    static final int SHOWN_CASES = 5;
    static final int SHOWN_SCORERS = 2;
    static final int SUPPORTS_CASES = 12;
    static final int SUPPORTS_SCORERS = 4;
    static final int MOST_PERCENT_BY_ONE = 40;

    public Gates {
        shown = List.copyOf(shown);
        supports = List.copyOf(supports);
    }

    static Gates of(Evidence evidence, List<StepProgress> steps) {
        List<Shortfall> shown = new ArrayList<>();
        atLeast(shown, Shortfall.Kind.CASES, evidence.cases().size(), SHOWN_CASES);
        atLeast(shown, Shortfall.Kind.SCORERS, evidence.scorers(), SHOWN_SCORERS);
        steps.stream()
                .filter(StepProgress::gated)
                .filter(step -> !step.enough())
                .map(step -> new Shortfall(
                        Shortfall.Kind.CRITICAL_STEP, step.scored(), StepProgress.FEWEST_SCORES, step.step()))
                .forEach(shown::add);
        return new Gates(shown, supports(evidence));
    }

    private static List<Shortfall> supports(Evidence evidence) {
        List<Shortfall> supports = new ArrayList<>();
        atLeast(supports, Shortfall.Kind.CASES, evidence.cases().size(), SUPPORTS_CASES);
        atLeast(supports, Shortfall.Kind.SCORERS, evidence.scorers(), SUPPORTS_SCORERS);
        int sheets = evidence.sheets().size();
        if (100 * evidence.mostByOneScorer() > MOST_PERCENT_BY_ONE * sheets) {
            supports.add(Shortfall.of(Shortfall.Kind.ONE_SCORER, evidence.mostByOneScorer(), sheets));
        }
        return supports;
    }

    private static void atLeast(List<Shortfall> shortfalls, Shortfall.Kind kind, int has, int needs) {
        if (has < needs) {
            shortfalls.add(Shortfall.of(kind, has, needs));
        }
    }

    /** Whether shares, intervals and the chart may be printed. */
    public boolean open() {
        return shown.isEmpty();
    }
}
