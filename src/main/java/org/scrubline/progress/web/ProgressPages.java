package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Wording;
import org.scrubline.progress.CaseChart;
import org.scrubline.progress.Evidence;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.StepProgress;
import org.scrubline.progress.TraineeProgress;
import org.springframework.stereotype.Component;

/** Makes the page of one trainee and one procedure. */
@Component
class ProgressPages {

    private final Wording wording;
    private final StepTable steps;
    private final EvidenceWords evidence;
    private final Charts charts;
    private final ChartWords chartWords;

    ProgressPages(Wording wording, StepTable steps, EvidenceWords evidence, Charts charts, ChartWords chartWords) {
        this.wording = wording;
        this.steps = steps;
        this.evidence = evidence;
        this.charts = charts;
        this.chartWords = chartWords;
    }

    /**
     * @param stroke code of the step whose levels stand under the curve; empty or null for the share of the case
     * @throws NotFound when the procedure has no such step
     */
    ProgressPage page(TraineeProgress read, ProcedureProgress chosen, @Nullable String stroke) {
        UUID trainee = read.trainee().id();
        return new ProgressPage(
                trainee,
                read.trainee().printedName(),
                Links.trainee(trainee),
                chosen.rubric().procedure(),
                chosen.rubric().title(),
                procedures(read),
                facts(chosen.evidence()),
                verdicts(chosen.evidence()),
                evidence.note(chosen),
                chosen.practiseNext().stream()
                        .map(step -> practise(trainee, chosen, step))
                        .toList(),
                chosen.gates().open() ? chart(chosen, stroke == null ? "" : stroke) : null,
                steps.of(trainee, chosen));
    }

    private List<ProgressPage.Option> procedures(TraineeProgress read) {
        return read.procedures().stream()
                .map(progress -> new ProgressPage.Option(
                        progress.rubric().procedure(),
                        wording.text(
                                "progress.procedure",
                                progress.rubric().title(),
                                progress.evidence().cases().size())))
                .toList();
    }

    private List<ProgressPage.Fact> facts(Evidence counted) {
        List<ProgressPage.Fact> facts = new ArrayList<>();
        facts.add(fact("progress.fact.cases", counted.cases().size()));
        facts.add(fact("progress.fact.sheets", counted.sheets().size()));
        facts.add(fact("progress.fact.scorers", counted.scorers()));
        if (counted.awaiting() > 0) {
            facts.add(fact("progress.fact.awaiting", counted.awaiting()));
        }
        if (counted.assisted() > 0) {
            facts.add(fact("progress.fact.assisted", counted.assisted()));
        }
        if (counted.contested() > 0) {
            facts.add(fact("progress.fact.contested", counted.contested()));
        }
        return List.copyOf(facts);
    }

    private List<ProgressPage.Fact> verdicts(Evidence counted) {
        return counted.verdicts().entrySet().stream()
                .map(entry -> fact("progress.verdict." + entry.getKey(), entry.getValue()))
                .toList();
    }

    private ProgressPage.Fact fact(String key, int count) {
        return new ProgressPage.Fact(Integer.toString(count), wording.text(key, count));
    }

    private ProgressPage.Practise practise(UUID trainee, ProcedureProgress chosen, StepProgress step) {
        String count = chosen.gates().open()
                ? wording.text(
                        "progress.practise.share",
                        Percent.of(step),
                        Percent.low(step),
                        Percent.high(step),
                        step.high(),
                        step.scored())
                : wording.text("progress.practise.count", step.high(), step.scored());
        List<String> tips = step.step().coaching();
        return new ProgressPage.Practise(
                step.step().code(),
                step.step().name(),
                count,
                tips.isEmpty() ? "" : tips.get(0),
                Links.step(trainee, chosen, step));
    }

    private ProgressPage.ChartView chart(ProcedureProgress chosen, String stroke) {
        CaseChart chart = chosen.chart();
        Strokes strokes =
                new Strokes(stroke.isEmpty() ? null : chosen.step(stroke).orElseThrow(NotFound::new));
        String label = strokes.step() == null
                ? wording.text("progress.stroke.share")
                : wording.text("progress.stroke.level", strokes.step().step().name());
        return new ProgressPage.ChartView(
                wording.text("progress.chart.title"),
                chartWords.summary(chart),
                charts.draw(chart, strokes, label),
                chartWords.table(chart, strokes, label),
                strokeChoices(chosen),
                stroke,
                chartWords.meaning(chart),
                wording.text("progress.chart.means.not", chosen.settings().chartCases()));
    }

    private List<ProgressPage.Option> strokeChoices(ProcedureProgress chosen) {
        List<ProgressPage.Option> choices = new ArrayList<>();
        choices.add(new ProgressPage.Option("", wording.text("progress.stroke.share")));
        chosen.steps().stream()
                .map(StepProgress::step)
                .map(step -> new ProgressPage.Option(
                        step.code(), wording.text("progress.step.name", step.code(), step.name())))
                .forEach(choices::add);
        return List.copyOf(choices);
    }
}
