package org.scrubline.progress.web;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.scrubline.progress.CaseChart;
import org.scrubline.progress.ChartDesign;
import org.scrubline.progress.CountedCase;
import org.scrubline.scoring.control.ChartPoint;
import org.scrubline.signoff.SignedSheet;
import org.springframework.stereotype.Component;

/** Says in sentences and in a table what the chart draws. */
@Component
class ChartWords {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

    private final Wording wording;

    ChartWords(Wording wording) {
        this.wording = wording;
    }

    String summary(CaseChart chart) {
        ChartDesign design = chart.design();
        long events = chart.points().stream()
                .filter(point -> point.counted().criticalEvent())
                .count();
        return wording.text(
                "progress.chart.summary",
                chart.points().size(),
                events,
                percent(ChartDesign.ACCEPTABLE),
                percent(ChartDesign.UNACCEPTABLE),
                design.limit(),
                design.plannedCases());
    }

    /** What the chart says: nothing yet, its one signal, or more critical events again. */
    String meaning(CaseChart chart) {
        ChartDesign design = chart.design();
        if (chart.signal().isEmpty()) {
            return wording.text("progress.chart.means.nothing", design.shortestCleanRun());
        }
        String signal = wording.text(
                "progress.chart.means.signal",
                chart.signal().getAsInt(),
                percent(ChartDesign.UNACCEPTABLE),
                percent(ChartDesign.FALSE_SIGNAL),
                design.plannedCases());
        String since = chart.worseAgain().isPresent()
                ? wording.text(
                        "progress.chart.means.again", chart.worseAgain().getAsInt(), percent(ChartDesign.ACCEPTABLE))
                : wording.text("progress.chart.means.watching");
        return signal + " " + since;
    }

    TableView table(CaseChart chart, Strokes strokes, String strokeLabel) {
        List<Column> columns = List.of(
                column("case", false),
                column("ended", false),
                column("away", true),
                column("event", false),
                column("value", true),
                column("signal", false),
                new Column(strokeLabel, true));
        return new TableView(
                columns,
                chart.points().stream().map(point -> row(point, strokes)).toList());
    }

    private Column column(String key, boolean numeric) {
        return new Column(wording.text("progress.chart.column." + key), numeric);
    }

    private List<Cell> row(CaseChart.Point point, Strokes strokes) {
        SignedSheet first = point.counted().sheets().get(0);
        List<Cell> cells = new ArrayList<>();
        cells.add(new Cell(number(point.chart().caseNumber(), point.counted()), "/signed/" + first.id()));
        cells.add(Cell.of(DAY.format(first.caseEndedAt().atZone(first.signedZone()))));
        cells.add(Cell.of(point.daysAway() > 0 ? Integer.toString(point.daysAway()) : "–"));
        cells.add(Cell.of(wording.text(
                point.counted().criticalEvent() ? "progress.chart.event.yes" : "progress.chart.event.no")));
        cells.add(Cell.of(String.format(Locale.ROOT, "%.2f", point.chart().value())));
        cells.add(Cell.of(signal(point.chart())));
        cells.add(Cell.of(strokes.text(point.counted())));
        return List.copyOf(cells);
    }

    private String signal(ChartPoint point) {
        if (!point.signal()) {
            return "–";
        }
        return wording.text(
                point.stage() == ChartPoint.Stage.GATHERING ? "progress.chart.signal" : "progress.chart.again",
                point.caseNumber());
    }

    private static int percent(double share) {
        return (int) Math.round(100 * share);
    }

    /** Number of a case, with its signs when it is contested or awaits a countersignature. */
    private String number(int number, CountedCase counted) {
        String text = counted.contested() ? wording.text("progress.case.contested", number) : Integer.toString(number);
        return counted.awaitingCountersignature() ? wording.text("progress.case.awaiting", text) : text;
    }
}
