package org.scrubline.committee.pack;

import static org.scrubline.rubric.Band.A;
import static org.scrubline.rubric.Band.B;
import static org.scrubline.rubric.Band.C;

import java.util.List;
import org.scrubline.committee.pack.PackContent.AskLine;

/**
 * What a committee is asked to look for before each level, row by row, and what there is. The numbers are defaults of this
 * project, without an outside source.
 *
 * @param family cases of the family
 * @param care cases of post-operative care
 * @param followed cases of the family with a visit at three months
 * @param signalled whether the chart of critical events has signalled
 */
record Checklist(FamilyCases family, FamilyCases care, FamilyCases followed, boolean signalled) {

    private static final int LAST_SAFE = 3;
    private static final int CLEAN_RUN = 6;
    private static final int LAST_INDEPENDENT = 10;

    /** The rows of E2, E3 or E4. */
    List<AskLine> rows(String level) {
        return switch (level) {
            case "E2" -> wholeCaseScrubbed();
            case "E3" -> wholeCaseInRoom();
            case "E4" -> wholeCaseNearby();
            default -> throw new IllegalArgumentException(level);
        };
    }

    private List<AskLine> wholeCaseScrubbed() {
        FamilyCases cases = family.in(A, B);
        return List.of(
                row(Ask.CASES, cases, 6),
                scorers(cases, 2),
                row(Ask.LAST_SAFE, cases.last(LAST_SAFE).safe(), LAST_SAFE));
    }

    private List<AskLine> wholeCaseInRoom() {
        FamilyCases cases = family.in(A, B);
        FamilyCases clean = cases.last(CLEAN_RUN).withoutCriticalEvent();
        return List.of(
                row(Ask.CASES, cases, 12),
                scorers(cases, 4),
                new AskLine(
                        Ask.CLEAN_RUN,
                        clean.size(),
                        CLEAN_RUN,
                        signalled || clean.size() >= CLEAN_RUN,
                        clean.records()),
                row(Ask.EVENT_HANDLED, family.withEventHandled(), 1));
    }

    private List<AskLine> wholeCaseNearby() {
        FamilyCases independent = family.in(A, B).last(LAST_INDEPENDENT).independent();
        return List.of(
                row(Ask.CASES, family.in(A, B, C), 20),
                row(Ask.INDEPENDENT_AB, independent, 8),
                row(Ask.INDEPENDENT_C, family.in(C).independent(), 3),
                row(Ask.OUTCOMES, followed, 10),
                row(Ask.CARE_STEPS, care.withCriticalStepsHigh(), 1));
    }

    private static AskLine scorers(FamilyCases cases, int needs) {
        return new AskLine(Ask.SCORERS, cases.scorers(), needs, cases.scorers() >= needs, cases.records());
    }

    private static AskLine row(Ask ask, FamilyCases counted, int needs) {
        return new AskLine(ask, counted.size(), needs, counted.size() >= needs, counted.records());
    }
}
