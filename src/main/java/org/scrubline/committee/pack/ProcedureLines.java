package org.scrubline.committee.pack;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.StepState;
import org.scrubline.committee.pack.PackContent.ChartLine;
import org.scrubline.committee.pack.PackContent.FitLine;
import org.scrubline.committee.pack.PackContent.ModelLine;
import org.scrubline.committee.pack.PackContent.PointLine;
import org.scrubline.committee.pack.PackContent.ProcedureLine;
import org.scrubline.committee.pack.PackContent.ReadinessLine;
import org.scrubline.committee.pack.PackContent.ShortLine;
import org.scrubline.committee.pack.PackContent.StepLine;
import org.scrubline.progress.CaseChart;
import org.scrubline.progress.CountedCase;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.ProgressAsOf.Known;
import org.scrubline.progress.Shortfall;
import org.scrubline.progress.StepProgress;
import org.scrubline.progress.StepScore;
import org.scrubline.progress.TraineeCurve;
import org.scrubline.rubric.Band;
import org.scrubline.scoring.curve.Readiness;
import org.scrubline.signoff.SignedSheet;

/** Writes one procedure of a pack from its numbers. */
final class ProcedureLines {

    private static final double DECIMALS = 10_000;

    private ProcedureLines() {}

    static ProcedureLine of(Known known) {
        ProcedureProgress progress = known.progress();
        List<SignedSheet> sheets = progress.evidence().sheets();
        return new ProcedureLine(
                progress.rubric().procedure(),
                progress.rubric().title(),
                fit(known),
                progress.evidence().cases().size(),
                sheets.size(),
                progress.evidence().assisted(),
                progress.evidence().awaiting(),
                progress.evidence().contested(),
                shortfalls(progress.gates().shown()),
                shortfalls(progress.gates().supports()),
                progress.gates().open() && known.curve().shown() ? model(known.curve()) : null,
                progress.evidence().verdicts(),
                bands(sheets),
                chart(progress.chart()),
                progress.steps().stream().map(ProcedureLines::step).toList());
    }

    private static FitLine fit(Known known) {
        TraineeCurve curve = known.curve();
        return new FitLine(known.fit(), curve.fittedUntil(), curve.fittedSheets(), curve.ownFit());
    }

    private static List<ShortLine> shortfalls(List<Shortfall> shortfalls) {
        return shortfalls.stream()
                .map(one -> new ShortLine(
                        one.kind().name(),
                        one.has(),
                        one.needs(),
                        one.step() == null ? null : one.step().code()))
                .toList();
    }

    private static Map<Band, Integer> bands(List<SignedSheet> sheets) {
        Map<Band, Integer> counts = new EnumMap<>(Band.class);
        for (Band band : Band.values()) {
            counts.put(band, 0);
        }
        sheets.forEach(sheet -> counts.merge(sheet.band(), 1, Integer::sum));
        return counts;
    }

    private static ModelLine model(TraineeCurve curve) {
        return new ModelLine(
                round(curve.model().evidence().index()),
                curve.cases().stream().map(ProcedureLines::point).toList(),
                curve.nextCase().stream().map(ProcedureLines::readiness).toList());
    }

    private static PointLine point(TraineeCurve.Point point) {
        return new PointLine(
                point.counted().id(),
                point.counted().endedAt(),
                round(point.chance()),
                round(point.low()),
                round(point.high()),
                raw(point.counted()),
                point.daysAway(),
                point.counted().contested(),
                point.counted().awaitingCountersignature());
    }

    private static List<Double> raw(CountedCase counted) {
        return counted.sheets().stream()
                .map(ProcedureLines::levels)
                .filter(levels -> !levels.isEmpty())
                .map(levels -> round((double) levels.stream()
                                .filter(level -> level >= StepScore.HIGH)
                                .count()
                        / levels.size()))
                .toList();
    }

    private static List<Integer> levels(SignedSheet sheet) {
        return sheet.steps().stream()
                .map(SignedSheet.SignedStep::state)
                .filter(StepState.Scored.class::isInstance)
                .map(state -> ((StepState.Scored) state).level())
                .toList();
    }

    private static ReadinessLine readiness(Readiness readiness) {
        return new ReadinessLine(
                readiness.standard().code(),
                readiness.standard().level(),
                readiness.standard().chance(),
                round(readiness.chance()),
                round(readiness.low()),
                round(readiness.high()),
                round(readiness.assurance()),
                readiness.support().name());
    }

    private static ChartLine chart(CaseChart chart) {
        List<Integer> events = IntStream.range(0, chart.points().size())
                .filter(i -> chart.points().get(i).counted().criticalEvent())
                .mapToObj(i -> i + 1)
                .toList();
        return new ChartLine(events, orNull(chart.signal()), orNull(chart.worseAgain()));
    }

    private static @Nullable Integer orNull(OptionalInt number) {
        return number.isPresent() ? number.getAsInt() : null;
    }

    private static StepLine step(StepProgress step) {
        return new StepLine(
                step.step().code(),
                step.step().name(),
                step.step().critical(),
                step.byLevel(),
                step.bySupervisor(),
                step.notPart(),
                step.notSeen());
    }

    /** Four decimals: more than a page shows, fewer than rounding of the last bit could reach. */
    static double round(double value) {
        return Math.round(value * DECIMALS) / DECIMALS;
    }
}
