package org.scrubline.cohort.web;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.scrubline.cohort.TraineeRow;
import org.scrubline.platform.Wording;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.StepProgress;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/** The table of trainees by steps. */
@Component
class Grid {

    private static final String NONE = "–";
    private static final int TINTS = 5;
    private static final int PERCENT_A_TINT = 100 / TINTS;

    private final Wording wording;

    Grid(Wording wording) {
        this.wording = wording;
    }

    CohortPage.GridRow row(TraineeRow row, Rubric rubric) {
        return new CohortPage.GridRow(
                row.trainee().printedName(),
                Links.trainee(row.trainee().id(), rubric.procedure()),
                rubric.steps().stream().map(step -> cell(row, rubric, step)).toList());
    }

    private CohortPage.GridCell cell(TraineeRow row, Rubric rubric, Step step) {
        ProcedureProgress progress = row.progress();
        Optional<StepProgress> counted = progress == null ? Optional.empty() : progress.step(step.code());
        String name = row.trainee().printedName();
        if (progress == null || counted.isEmpty() || counted.get().scored() == 0) {
            return new CohortPage.GridCell(NONE, "none", null, wording.text("cohort.cell.none", name, step.name()));
        }
        StepProgress scores = counted.get();
        String href = Links.step(row.trainee().id(), rubric.procedure(), step.code());
        // As text: a message makes a format of its own for every number, and there are hundreds of cells.
        String scored = Integer.toString(scores.scored());
        if (!progress.gates().open() || !scores.enough()) {
            String high = Integer.toString(scores.high());
            String label = wording.text("cohort.cell.few", name, step.name(), high, scored);
            return new CohortPage.GridCell(wording.text("components.few"), "few", href, label);
        }
        int share = percent(scores);
        String percent = Integer.toString(share);
        return new CohortPage.GridCell(
                wording.text("cohort.cell", percent, scored),
                "tint-" + tint(share),
                href,
                wording.text("cohort.cell.label", name, step.name(), percent, scored));
    }

    private static int percent(StepProgress scores) {
        return Math.round(100f * scores.high() / scores.scored());
    }

    /** 0 to 20 % is the lightest, 81 to 100 % the darkest of five. */
    static int tint(int percent) {
        return Math.max(1, (percent + PERCENT_A_TINT - 1) / PERCENT_A_TINT);
    }

    List<String> scale() {
        return IntStream.rangeClosed(1, TINTS)
                .mapToObj(tint -> wording.text(
                        "cohort.scale", tint == 1 ? 0 : (tint - 1) * PERCENT_A_TINT + 1, tint * PERCENT_A_TINT))
                .toList();
    }
}
