package org.scrubline.cohort.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.OwnScoring;
import org.scrubline.cohort.SignalReport;
import org.scrubline.cohort.signal.ScorerFigures;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Makes the pages on how supervisors score. */
@Component
class ScorerPages {

    /** Fewer colleagues could be told apart by their figures. */
    private static final int COLLEAGUES = 3;

    private static final double TWO_SIDED_95 = 1.96;
    private static final String NOTHING = "–";

    private final Wording wording;
    private final SignalWords words;
    private final SignalPages facts;

    ScorerPages(Wording wording, SignalWords words, SignalPages facts) {
        this.wording = wording;
        this.words = words;
        this.facts = facts;
    }

    ScorerPage page(SignalReport report) {
        List<Column> columns = Stream.of(
                        "supervisor", "sheets", "trainees", "offset", "two-levels", "one-level", "late", "median")
                .map(key -> column(key, !key.equals("supervisor")))
                .toList();
        return new ScorerPage(
                report.programme().id().toString(),
                SignalPages.programmes(report),
                facts.facts(report),
                null,
                report.findings().scorers().stream()
                        .map(signal -> words.line(report, signal, words.title(report, signal), false))
                        .sorted(Comparator.comparing(SignalPage.Line::title))
                        .toList(),
                wording.text("scoring-habits.caption", ScorerFigures.SHEETS, ScorerFigures.TRAINEES),
                new TableView(
                        columns,
                        report.findings().figures().stream()
                                .sorted(Comparator.comparing(one -> report.name(one.scorer())))
                                .map(one -> row(report, one))
                                .toList()));
    }

    private Column column(String key, boolean numeric) {
        return new Column(wording.text("scoring-habits." + key), numeric);
    }

    private List<Cell> row(SignalReport report, ScorerFigures one) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.of(report.name(one.scorer())));
        cells.add(Cell.of(one.sheets()));
        cells.add(Cell.of(one.trainees()));
        figures().forEach(figure -> cells.add(Cell.of(one.enough() ? figure.text.apply(one) : NOTHING)));
        return cells;
    }

    ScorerPage own(OwnScoring scoring) {
        SignalReport report = scoring.report();
        ScorerFigures own = scoring.own().orElse(null);
        return new ScorerPage(
                report.programme().id().toString(),
                SignalPages.programmes(report),
                facts.facts(report),
                few(own),
                scoring.signals().stream()
                        .map(signal -> words.line(report, signal, words.title(signal), false))
                        .toList(),
                wording.text("my-scoring.caption"),
                own == null || !own.enough() ? new TableView(List.of(), List.of()) : beside(own, scoring.colleagues()));
    }

    private @Nullable String few(@Nullable ScorerFigures own) {
        if (own != null && own.enough()) {
            return null;
        }
        return wording.text(
                "scoring-habits.few",
                own == null ? 0 : own.sheets(),
                own == null ? 0 : own.trainees(),
                ScorerFigures.SHEETS,
                ScorerFigures.TRAINEES);
    }

    private TableView beside(ScorerFigures own, List<ScorerFigures> colleagues) {
        List<Column> columns = List.of(column("figure", false), column("own", true), column("colleagues", true));
        return new TableView(
                columns,
                figures()
                        .map(figure -> List.of(
                                Cell.of(wording.text("scoring-habits." + figure.key)),
                                Cell.of(figure.text.apply(own)),
                                Cell.of(spread(figure, colleagues))))
                        .toList());
    }

    private String spread(Figure figure, List<ScorerFigures> colleagues) {
        if (colleagues.size() < COLLEAGUES) {
            return NOTHING;
        }
        List<ScorerFigures> sorted = colleagues.stream()
                .sorted(Comparator.comparingDouble(figure.value))
                .toList();
        return wording.text(
                "scoring-habits.spread",
                figure.plain.apply(sorted.get(0)),
                figure.plain.apply(sorted.get(sorted.size() - 1)),
                sorted.size());
    }

    /** A figure: what it sorts by, alone, and with its denominator or interval. */
    private record Figure(
            String key,
            ToDoubleFunction<ScorerFigures> value,
            Function<ScorerFigures, String> plain,
            Function<ScorerFigures, String> text) {}

    private Stream<Figure> figures() {
        return Stream.of(
                new Figure(
                        "offset",
                        ScorerFigures::offset,
                        one -> wording.text("scoring-habits.offset.plain", one.offset()),
                        one -> wording.text(
                                "scoring-habits.offset.value",
                                one.offset(),
                                one.offset() - TWO_SIDED_95 * one.offsetError(),
                                one.offset() + TWO_SIDED_95 * one.offsetError())),
                share("two-levels", ScorerFigures::twoLevels, ScorerFigures::scores),
                share("one-level", ScorerFigures::oneLevelShare, ScorerFigures::canDiffer),
                share("late", ScorerFigures::lateShare, ScorerFigures::sheets),
                new Figure(
                        "median",
                        ScorerFigures::medianHours,
                        one -> wording.text("scoring-habits.hours", one.medianHours()),
                        one -> wording.text("scoring-habits.hours", one.medianHours())));
    }

    private Figure share(String key, ToDoubleFunction<ScorerFigures> value, Function<ScorerFigures, Integer> of) {
        return new Figure(
                key,
                value,
                one -> wording.text("scoring-habits.share.plain", value.applyAsDouble(one)),
                one -> wording.text("scoring-habits.share", value.applyAsDouble(one), of.apply(one)));
    }
}
