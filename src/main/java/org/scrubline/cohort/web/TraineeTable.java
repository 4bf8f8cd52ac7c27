package org.scrubline.cohort.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.scrubline.cohort.CohortReport;
import org.scrubline.cohort.TraineeRow;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Exposure and scorers, a line a trainee. */
@Component
class TraineeTable {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

    private final Wording wording;

    TraineeTable(Wording wording) {
        this.wording = wording;
    }

    TableView of(CohortReport report, List<TraineeRow> rows) {
        List<Column> columns = Stream.of(
                        "trainee", "cases", "scorers", "awaiting", "waiting", "contested", "last", "since")
                .map(key -> new Column(wording.text("cohort.trainees." + key), !key.equals("trainee")))
                .toList();
        return new TableView(columns, rows.stream().map(row -> row(row, report)).toList());
    }

    private List<Cell> row(TraineeRow row, CohortReport report) {
        OptionalLong since = row.daysSince(report.at());
        return List.of(
                new Cell(
                        row.trainee().printedName(),
                        Links.trainee(row.trainee().id(), report.rubric().procedure())),
                Cell.of(row.cases()),
                Cell.of(row.scorers()),
                Cell.of(row.awaiting()),
                Cell.of(row.waiting()),
                Cell.of(row.contested()),
                Cell.of(last(row, report.programme().zone())),
                Cell.of(since.isPresent() ? Long.toString(since.getAsLong()) : "–"));
    }

    private static String last(TraineeRow row, ZoneId zone) {
        Instant last = row.lastCaseAt();
        return last == null ? "–" : DAY.format(last.atZone(zone));
    }
}
