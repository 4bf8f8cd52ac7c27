package org.scrubline.committee.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.pack.PackContent.ChartLine;
import org.scrubline.committee.pack.PackContent.FitLine;
import org.scrubline.committee.pack.PackContent.ModelLine;
import org.scrubline.committee.pack.PackContent.PointLine;
import org.scrubline.committee.pack.PackContent.ProcedureLine;
import org.scrubline.committee.pack.PackContent.ReadinessLine;
import org.scrubline.committee.pack.PackContent.ShortLine;
import org.scrubline.committee.pack.PackContent.StepLine;
import org.scrubline.committee.web.EvidencePage.ProcedureView;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.springframework.stereotype.Component;

/** Says the numbers of one procedure in a pack. */
@Component
class ProcedureViews {

    private final CommitteeWords words;

    ProcedureViews(CommitteeWords words) {
        this.words = words;
    }

    ProcedureView of(ProcedureLine line, ZoneId zone) {
        ModelLine model = line.model();
        return new ProcedureView(
                line.procedure(),
                line.title(),
                facts(line),
                shortfalls(line),
                model == null ? null : PackDrawing.of(model.points(), words),
                model == null ? "" : words.say("committee.curve.summary", line.cases(), number(model.index())),
                model == null ? null : points(model.points(), zone),
                model == null ? null : next(model.next()),
                steps(line.steps()),
                counts(line.verdicts(), verdict -> words.say("committee.verdict." + verdict)),
                counts(line.bands(), Enum::name),
                chart(line.chart()),
                fit(line.fit()));
    }

    private List<Fact> facts(ProcedureLine line) {
        return List.of(
                fact("cases", line.cases()),
                fact("sheets", line.sheets()),
                fact("assisted", line.assisted()),
                fact("awaiting", line.awaiting()),
                fact("contested", line.contested()));
    }

    private Fact fact(String key, int count) {
        return new Fact(Integer.toString(count), words.say("committee.fact." + key, count));
    }

    private List<String> shortfalls(ProcedureLine line) {
        List<String> all = new ArrayList<>();
        line.shown().forEach(one -> all.add(words.say("committee.short.shown", shortfall(one, line))));
        line.supports().forEach(one -> all.add(words.say("committee.short.supports", shortfall(one, line))));
        return all;
    }

    private String shortfall(ShortLine one, ProcedureLine line) {
        String step = line.steps().stream()
                .filter(each -> each.code().equals(one.step()))
                .map(StepLine::name)
                .findFirst()
                .orElse("");
        return words.say("committee.short." + one.kind(), one.has(), one.needs(), step);
    }

    private TableView points(List<PointLine> points, ZoneId zone) {
        return new TableView(
                columns("number", "case", "chance", "band90", "raw"),
                IntStream.range(0, points.size())
                        .mapToObj(i -> List.of(
                                Cell.of(i + 1),
                                Cell.of(words.day(points.get(i).endedAt(), zone)),
                                Cell.of(percent(points.get(i).chance())),
                                Cell.of(band(points.get(i).low(), points.get(i).high())),
                                Cell.of(raw(points.get(i)))))
                        .toList());
    }

    private String raw(PointLine point) {
        String shares = point.raw().stream().map(this::percent).collect(Collectors.joining(", "));
        return shares.isEmpty() ? "–" : shares;
    }

    private TableView next(List<ReadinessLine> next) {
        return new TableView(
                columns("level", "standard", "chance", "band90", "assurance"),
                next.stream()
                        .map(one -> List.of(
                                Cell.of(one.level()),
                                Cell.of(words.say(
                                        "committee.standard", one.steps(), CommitteeWords.percent(one.wanted()))),
                                Cell.of(percent(one.chance())),
                                Cell.of(band(one.low(), one.high())),
                                Cell.of(percent(one.assurance()))))
                        .toList());
    }

    private TableView steps(List<StepLine> steps) {
        return new TableView(
                columns("step", "one", "two", "three", "four", "five", "supervisor", "not-part", "not-seen"),
                steps.stream().map(this::step).toList());
    }

    private List<Cell> step(StepLine step) {
        String name = step.critical() ? words.say("committee.step.critical", step.name()) : step.name();
        return Stream.of(
                        Stream.of(Cell.of(name)),
                        step.levels().stream().map(Cell::of),
                        Stream.of(step.bySupervisor(), step.notPart(), step.notSeen())
                                .map(Cell::of))
                .flatMap(cells -> cells)
                .toList();
    }

    private static <K> String counts(Map<K, Integer> counts, Function<K, String> name) {
        return counts.entrySet().stream()
                .map(one -> name.apply(one.getKey()) + ": " + one.getValue())
                .collect(Collectors.joining("; "));
    }

    private String chart(ChartLine chart) {
        String events = chart.eventAt().isEmpty()
                ? words.say("committee.chart.no-event")
                : words.say(
                        "committee.chart.events",
                        chart.eventAt().stream().map(String::valueOf).collect(Collectors.joining(", ")));
        return events + " " + signal(chart.signalAt())
                + (chart.worseAt() == null ? "" : " " + words.say("committee.chart.worse", chart.worseAt()));
    }

    private String signal(@Nullable Integer at) {
        return at == null ? words.say("committee.chart.signal.none") : words.say("committee.chart.signal", at);
    }

    private String fit(FitLine fit) {
        String from = words.say(fit.own() ? "committee.fit.own" : "committee.fit.shipped", fit.sheets());
        return fit.id() == null
                ? from
                : from + " " + words.say("committee.fit.id", fit.id().toString());
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key ->
                        new Column(words.say("committee.column." + key), !key.equals("step") && !key.equals("case")))
                .toList();
    }

    private String percent(double share) {
        return words.say("committee.percent", CommitteeWords.percent(share));
    }

    private String band(double low, double high) {
        return words.say("committee.range", CommitteeWords.percent(low), CommitteeWords.percent(high));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
