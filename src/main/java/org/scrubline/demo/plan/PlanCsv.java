package org.scrubline.demo.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.scrubline.platform.Csv;
import org.scrubline.scoring.curve.CaseContext;
import org.scrubline.scoring.curve.ObservedScore;

/** Scores in the form the command {@code curves} reads: a header, then one line for each observed step. */
public final class PlanCsv {

    private static final List<String> COLUMNS =
            List.of("assessment", "trainee", "case_index", "experience", "gap_excess", "supervisor");
    private static final List<String> LEVEL = List.of("step", "lo", "hi");
    private static final int COVARIATES = 3;

    private PlanCsv() {}

    public static String header() {
        List<String> cells = new ArrayList<>(COLUMNS);
        IntStream.rangeClosed(1, COVARIATES).forEach(x -> cells.add("x" + x));
        cells.addAll(LEVEL);
        return Csv.line(cells);
    }

    public static String line(ObservedScore score) {
        CaseContext context = score.context();
        List<String> cells = new ArrayList<>(List.of(
                score.assessment(),
                score.trainee(),
                context.caseId(),
                String.valueOf(context.experience()),
                String.valueOf(context.gapExcess()),
                score.supervisor()));
        context.complexity().forEach(x -> cells.add(String.valueOf(x)));
        cells.addAll(List.of(score.step(), String.valueOf(score.lowest()), String.valueOf(score.highest())));
        return Csv.line(cells);
    }
}
