package org.scrubline.progress;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.people.ProgrammeSettings;

/**
 * Whether there is enough to print a share and a chart at all, and enough for a proposal to a committee. The numbers
 * are the programme's settings; raw counts are printed whatever the gates say. A sheet that awaits its countersignature
 * counts toward no gate.
 *
 * @param shown what is short for printing: cases, scorers, scores of each critical step
 * @param supports what is short, beyond that, for a proposal: cases, scorers, and a limit for the part of one scorer
 */
public record Gates(List<Shortfall> shown, List<Shortfall> supports) {

    public Gates {
        shown = List.copyOf(shown);
        supports = List.copyOf(supports);
    }

    static Gates of(Evidence all, List<StepProgress> steps, ProgrammeSettings settings) {
        Evidence evidence = all.settled();
        List<Shortfall> shown = new ArrayList<>();
        atLeast(shown, Shortfall.Kind.CASES, evidence.cases().size(), settings.shownCases());
        atLeast(shown, Shortfall.Kind.SCORERS, evidence.scorers(), settings.shownScorers());
        steps.stream()
                .filter(StepProgress::gated)
                .filter(step -> step.settled() < step.fewest())
                .map(step -> new Shortfall(Shortfall.Kind.CRITICAL_STEP, step.settled(), step.fewest(), step.step()))
                .forEach(shown::add);
        return new Gates(shown, supports(evidence, settings));
    }

    private static List<Shortfall> supports(Evidence evidence, ProgrammeSettings settings) {
        List<Shortfall> supports = new ArrayList<>();
        atLeast(supports, Shortfall.Kind.CASES, evidence.cases().size(), settings.supportsCases());
        atLeast(supports, Shortfall.Kind.SCORERS, evidence.scorers(), settings.supportsScorers());
        int sheets = evidence.sheets().size();
        if (100 * evidence.mostByOneScorer() > settings.mostByOne() * sheets) {
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
