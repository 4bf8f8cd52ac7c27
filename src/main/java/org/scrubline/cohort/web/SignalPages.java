package org.scrubline.cohort.web;

import java.time.Instant;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.scrubline.cohort.SignalReport;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Makes the page of early signals. */
@Component
class SignalPages {

    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM uu", Locale.UK);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", Locale.UK);
    private static final int MONTHS = 12;

    private final Wording wording;
    private final SignalWords words;

    SignalPages(Wording wording, SignalWords words) {
        this.wording = wording;
        this.words = words;
    }

    SignalPage page(SignalReport report) {
        return new SignalPage(
                report.programme().id().toString(),
                programmes(report),
                facts(report),
                report.findings().trainees().stream()
                        .map(signal -> words.line(report, signal, words.titleOfTrainee(report, signal), true))
                        .sorted(Comparator.comparing(SignalPage.Line::title))
                        .toList(),
                months(report));
    }

    static List<CohortPage.Option> programmes(SignalReport report) {
        return report.programmes().stream()
                .map(one -> new CohortPage.Option(one.id().toString(), one.name()))
                .toList();
    }

    List<CohortPage.Fact> facts(SignalReport report) {
        return List.of(
                new CohortPage.Fact(
                        Integer.toString(report.read().forms().size()),
                        wording.text(
                                "signals.fact.sheets", report.read().forms().size())),
                new CohortPage.Fact(
                        null,
                        wording.text(
                                "signals.fact.at",
                                MOMENT.format(
                                        report.at().atZone(report.programme().zone())))));
    }

    /** Cases that ended, signed or not, each once. */
    private TableView months(SignalReport report) {
        YearMonth last = month(report, report.at());
        List<YearMonth> shown = IntStream.range(0, MONTHS)
                .mapToObj(back -> last.minusMonths(MONTHS - 1L - back))
                .toList();
        List<Column> columns = new ArrayList<>();
        columns.add(new Column(wording.text("signals.months.trainee"), false));
        shown.forEach(month -> columns.add(new Column(MONTH.format(month), true)));
        columns.add(new Column(wording.text("signals.months.all"), true));
        return new TableView(
                columns,
                report.read().trainees().stream()
                        .sorted(Comparator.comparing(report::name))
                        .map(trainee -> row(report, trainee, shown))
                        .toList());
    }

    private static List<Cell> row(SignalReport report, String trainee, List<YearMonth> shown) {
        Map<YearMonth, Long> counts = report.read().ended(trainee).stream()
                .map(instant -> month(report, instant))
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        List<Cell> cells = new ArrayList<>();
        cells.add(new Cell(report.name(trainee), "/progress/" + trainee));
        shown.forEach(month -> cells.add(Cell.of(Long.toString(counts.getOrDefault(month, 0L)))));
        cells.add(Cell.of(Long.toString(
                counts.values().stream().mapToLong(Long::longValue).sum())));
        return cells;
    }

    private static YearMonth month(SignalReport report, Instant instant) {
        return YearMonth.from(instant.atZone(report.programme().zone()));
    }
}
