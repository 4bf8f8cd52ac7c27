package org.scrubline.outcome.web;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.scrubline.outcome.EarlyEvent;
import org.scrubline.outcome.OutcomeReport;
import org.scrubline.outcome.OutcomeReport.TraineeOutcomes;
import org.scrubline.outcome.ProgrammeOutcomes.JudgedCase;
import org.scrubline.outcome.ProgrammeOutcomes.TraineeOutcomeCases;
import org.scrubline.outcome.SuccessSet;
import org.scrubline.outcome.Tally;
import org.scrubline.outcome.Visit;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;
import org.springframework.stereotype.Component;

/** Makes the page of a programme's outcomes and that of the cases behind one trainee's numbers. */
@Component
class ProgrammeOutcomesPages {

    /** What stands for all families. */
    static final String EVERY = "ALL";

    private static final List<String> NUMERIC =
            List.of("cases", "whole", "judged", "inside", "share", "found", "known");

    private final OutcomeWords words;

    ProgrammeOutcomesPages(OutcomeWords words) {
        this.words = words;
    }

    ProgrammeOutcomesPage page(OutcomeReport report, boolean enters) {
        return new ProgrammeOutcomesPage(
                report.programme().id().toString(),
                OutcomeWords.programmes(report.programmes()),
                families(),
                family(report),
                sets(),
                report.wish().set().name(),
                definition(report),
                report.all().cases() == 0,
                facts(report),
                Funnels.of(report).orElse(null),
                words.say("outcome.funnel.summary", words.rate(report.all().qualified())),
                points(report),
                trainees(report),
                few(report),
                table(
                        "event",
                        Arrays.stream(EarlyEvent.values())
                                .map(event -> counted(
                                        words.say(event),
                                        requireNonNull(report.early().get(event))))
                                .toList()),
                words.say("outcome.early.low", report.settings().lowPressureAt(), EarlyEvent.DAYS),
                table(
                        "care",
                        Arrays.stream(Visit.Care.values())
                                .map(care -> counted(
                                        words.say(care),
                                        requireNonNull(report.care().get(care))))
                                .toList()),
                enters);
    }

    private List<Option> families() {
        return Stream.concat(
                        Arrays.stream(Family.values())
                                .filter(Family::judgedByOutcome)
                                .map(family -> Option.of(family.name(), words.say(family))),
                        Stream.of(Option.of(EVERY, words.say("outcome.family.all"))))
                .toList();
    }

    private static String family(OutcomeReport report) {
        Family family = report.wish().family();
        return family == null ? EVERY : family.name();
    }

    private List<Option> sets() {
        return Arrays.stream(SuccessSet.values())
                .map(set -> Option.of(set.name(), words.say("outcome.set", set.upper(), set.fall())))
                .toList();
    }

    String definition(OutcomeReport report) {
        return words.definition(report.wish().set(), report.settings().successLowest());
    }

    private List<String> facts(OutcomeReport report) {
        return List.of(
                words.say(
                        "outcome.fact.known",
                        report.all().cases(),
                        report.all().known(),
                        OutcomeWords.at(report.at(), report.programme().zone())),
                words.say("outcome.fact.complete", words.rate(report.all().complete())),
                words.say("outcome.fact.qualified", words.rate(report.all().qualified())),
                words.say(
                        "outcome.fact.low", report.all().outside(), report.all().lowAlone()),
                words.say(
                        "outcome.fact.operator",
                        report.operatorAlone().of(),
                        report.operatorAlone().has()));
    }

    private TableView points(OutcomeReport report) {
        List<TraineeOutcomes> units = Funnels.points(report);
        return new TableView(
                columns("point", "inside", "judged", "share"),
                IntStream.range(0, units.size())
                        .mapToObj(i -> {
                            Tally tally = units.get(i).count().qualified();
                            return List.of(
                                    new Cell(words.say("outcome.point", i + 1), cases(report, units.get(i))),
                                    Cell.of(tally.has()),
                                    Cell.of(tally.of()),
                                    Cell.of(words.say(
                                            "outcome.percent",
                                            OutcomeWords.percent((double) tally.has() / tally.of()))));
                        })
                        .toList());
    }

    private static String cases(OutcomeReport report, TraineeOutcomes one) {
        return "/outcomes/programme/cases?programme=%s&family=%s&set=%s&trainee=%s"
                .formatted(
                        report.programme().id(), family(report), report.wish().set(), one.id());
    }

    private TableView trainees(OutcomeReport report) {
        return new TableView(
                columns("trainee", "cases", "whole", "bands", "judged", "complete", "qualified"),
                report.trainees().stream().map(one -> trainee(report, one)).toList());
    }

    private List<Cell> trainee(OutcomeReport report, TraineeOutcomes one) {
        boolean enough = one.count().known() >= report.settings().outcomeCases();
        String few = words.say("outcome.few.cell");
        return List.of(
                new Cell(one.name(), cases(report, one)),
                Cell.of(one.count().cases()),
                Cell.of(one.whole()),
                Cell.of(Arrays.stream(Band.values())
                        .map(band -> words.say("outcome.band", band, one.bands().getOrDefault(band, 0)))
                        .collect(Collectors.joining(" · "))),
                Cell.of(one.count().known()),
                Cell.of(enough ? words.rate(one.count().complete()) : few),
                Cell.of(enough ? words.rate(one.count().qualified()) : few));
    }

    /** With what few cases leave open, reckoned here. */
    private String few(OutcomeReport report) {
        return words.say(
                "outcome.few",
                report.settings().outcomeCases(),
                words.rate(new Tally(0, 10)),
                words.rate(new Tally(3, 30)),
                words.rate(new Tally(6, 30)));
    }

    private List<Cell> counted(String label, Tally tally) {
        return List.of(Cell.of(label), Cell.of(tally.has()), Cell.of(tally.of()), Cell.of(words.rate(tally)));
    }

    private TableView table(String first, List<List<Cell>> rows) {
        return new TableView(columns(first, "found", "known", "rate"), rows);
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key -> new Column(words.say("outcome.column." + key), NUMERIC.contains(key)))
                .toList();
    }

    /** The cases behind one trainee's numbers. */
    TableView cases(TraineeOutcomeCases behind) {
        return new TableView(
                columns("case", "procedure", "ended", "band", "said"),
                behind.cases().stream().map(one -> judged(behind, one)).toList());
    }

    private List<Cell> judged(TraineeOutcomeCases behind, JudgedCase one) {
        SuccessSet.Judgement judgement = one.judgement();
        String said = judgement
                .ground()
                .map(ground -> words.say("outcome.case.outside", words.say(ground)))
                .orElseGet(() -> words.say(judgement.result()));
        return List.of(
                new Cell(
                        one.of().reference(),
                        behind.linked() ? "/outcomes/" + one.of().id() : null),
                Cell.of(words.procedure(one.of().procedure())),
                Cell.of(OutcomeWords.day(one.of().operatedOn())),
                Cell.of(one.of().band().name()),
                Cell.of(said));
    }
}
