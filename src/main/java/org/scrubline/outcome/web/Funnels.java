package org.scrubline.outcome.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.scrubline.outcome.OutcomeReport;
import org.scrubline.outcome.OutcomeReport.TraineeOutcomes;
import org.scrubline.outcome.Tally;
import org.scrubline.scoring.estimate.FunnelLimits;

/**
 * Draws each trainee's rate over the number of cases with the exact binomial limits around the programme's rate. The points
 * bear no name, so that nobody reads a league table out of them.
 */
final class Funnels {

    static final int WIDTH = 620;
    static final int HEIGHT = 340;

    private static final double LEFT = 48;
    private static final double RIGHT = 604;
    private static final double TOP = 24;
    private static final double BASE = 290;
    private static final int FEWEST = 20;
    private static final double ONE_SIDE_95 = .025;
    private static final double ONE_SIDE_998 = .001;

    private Funnels() {}

    /** Trainees with a judged case, those with the fewest first; the order tells nothing of the rate. */
    static List<TraineeOutcomes> points(OutcomeReport report) {
        return report.trainees().stream()
                .filter(one -> one.count().known() > 0)
                .sorted(Comparator.comparingInt(
                                (TraineeOutcomes one) -> one.count().known())
                        .thenComparing(TraineeOutcomes::id))
                .toList();
    }

    /** Empty when no rate lies between 0 and 1, for there are no limits around those. */
    static Optional<FunnelDrawing> of(OutcomeReport report) {
        Tally all = report.all().qualified();
        if (all.has() == 0 || all.has() == all.of()) {
            return Optional.empty();
        }
        List<TraineeOutcomes> units = points(report);
        int most = Math.max(
                FEWEST,
                units.stream().mapToInt(one -> one.count().known()).max().orElse(0) + 2);
        return Optional.of(draw((double) all.has() / all.of(), units, most));
    }

    private static FunnelDrawing draw(double target, List<TraineeOutcomes> units, int most) {
        FunnelLimits limits = new FunnelLimits(target);
        return new FunnelDrawing(
                WIDTH,
                HEIGHT,
                print(LEFT),
                print(RIGHT),
                print(TOP),
                print(BASE),
                print(y(target)),
                List.of(
                        limit("far", limits, ONE_SIDE_998, most),
                        limit("near", limits, ONE_SIDE_95, most),
                        limit("near", limits, 1 - ONE_SIDE_95, most),
                        limit("far", limits, 1 - ONE_SIDE_998, most)),
                units.stream()
                        .map(one -> one.count().qualified())
                        .map(tally -> new FunnelDrawing.Point(
                                print(x(tally.of(), most)), print(y((double) tally.has() / tally.of()))))
                        .toList(),
                ticks(most));
    }

    private static FunnelDrawing.Limit limit(String kind, FunnelLimits limits, double tail, int most) {
        String points = IntStream.rangeClosed(1, most)
                .mapToObj(n -> print(x(n, most)) + "," + print(y(limits.exact(n, tail))))
                .collect(Collectors.joining(" "));
        return new FunnelDrawing.Limit(kind, points);
    }

    private static List<FunnelDrawing.Tick> ticks(int most) {
        int every = most <= 50 ? 10 : most <= 200 ? 25 : 100;
        List<FunnelDrawing.Tick> ticks = new ArrayList<>();
        for (int n = every; n <= most; n += every) {
            ticks.add(new FunnelDrawing.Tick(print(x(n, most)), Integer.toString(n)));
        }
        return ticks;
    }

    private static double x(int cases, int most) {
        return LEFT + (RIGHT - LEFT) * cases / most;
    }

    private static double y(double share) {
        return BASE - (BASE - TOP) * share;
    }

    private static String print(double coordinate) {
        return String.format(Locale.ROOT, "%.1f", coordinate);
    }
}
