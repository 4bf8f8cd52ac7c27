package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.StepProgress;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/** The counts of every step: raw ones always, the share and its interval when there is enough for them. */
@Component
class StepTable {

    private final Wording wording;

    StepTable(Wording wording) {
        this.wording = wording;
    }

    TableView of(UUID trainee, ProcedureProgress progress) {
        List<Column> columns = new ArrayList<>();
        columns.add(column("step", false));
        columns.add(column("share", true));
        columns.add(column("interval", true));
        IntStream.rangeClosed(1, Step.LEVELS)
                .mapToObj(level -> new Column(wording.text("progress.steps.level", level), true))
                .forEach(columns::add);
        columns.add(column("by-supervisor", true));
        columns.add(column("not-part", true));
        columns.add(column("not-seen", true));
        boolean open = progress.gates().open();
        return new TableView(
                columns,
                progress.steps().stream()
                        .map(step -> row(step, open, Links.step(trainee, progress, step)))
                        .toList());
    }

    private Column column(String key, boolean numeric) {
        return new Column(wording.text("progress.steps." + key), numeric);
    }

    private List<Cell> row(StepProgress step, boolean open, String href) {
        List<Cell> cells = new ArrayList<>();
        cells.add(new Cell(name(step), href));
        cells.add(new Cell(share(step, open), step.scored() > 0 ? href : null));
        cells.add(Cell.of(interval(step, open)));
        step.byLevel().forEach(count -> cells.add(Cell.of(count)));
        cells.add(Cell.of(step.bySupervisor()));
        cells.add(Cell.of(step.notPart()));
        cells.add(Cell.of(step.notSeen()));
        return List.copyOf(cells);
    }

    private String name(StepProgress step) {
        String name = wording.text(
                "progress.step.name", step.step().code(), step.step().name());
        String critical = step.step().critical() ? wording.text("progress.step.critical", name) : name;
        return step.current() ? critical : wording.text("progress.step.older", critical);
    }

    private String share(StepProgress step, boolean open) {
        if (step.scored() == 0) {
            return "–";
        }
        return open && step.enough()
                ? wording.text("progress.share", Percent.of(step), step.high(), step.scored())
                : wording.text("progress.share.few", step.high(), step.scored());
    }

    private String interval(StepProgress step, boolean open) {
        return open && step.enough() ? wording.text("progress.interval", Percent.low(step), Percent.high(step)) : "–";
    }
}
