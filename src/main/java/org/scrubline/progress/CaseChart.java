package org.scrubline.progress;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.scoring.control.ChartPoint;

/**
 * The learning-curve CUSUM of cases with a critical event. After its one signal an ordinary CUSUM of the same rates and
 * limit watches for a return to more of them.
 *
 * @param points one a case, oldest first
 */
public record CaseChart(ChartDesign design, List<Point> points) {

    /**
     * One case on the chart.
     *
     * @param daysAway whole days since the case before when that was a gap, otherwise 0
     */
    public record Point(CountedCase counted, ChartPoint chart, int daysAway) {}

    public CaseChart {
        points = List.copyOf(points);
    }

    static CaseChart of(List<CountedCase> cases, ProgrammeSettings settings) {
        ChartDesign design = ChartDesign.forCases(cases.size(), settings.chartCases());
        List<ChartPoint> path = design.cusum()
                .path(cases.stream().map(CountedCase::criticalEvent).toList());
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < path.size(); i++) {
            int away = i == 0
                    ? 0
                    : daysAway(cases.get(i - 1).endedAt(), cases.get(i).endedAt(), settings.gapShown());
            points.add(new Point(cases.get(i), path.get(i), away));
        }
        return new CaseChart(design, points);
    }

    /**
     * Whole days between two instants when they are further apart than a gap, otherwise 0.
     *
     * @param gap longest time without a case that is none: beyond, the line is drawn broken and the page says so
     */
    public static int daysAway(Instant from, Instant to, Duration gap) {
        Duration between = Duration.between(from, to);
        return between.compareTo(gap) > 0 ? (int) between.toDays() : 0;
    }

    /** The case of the one signal. */
    public OptionalInt signal() {
        return signal(ChartPoint.Stage.GATHERING);
    }

    /** The first case after it at which the watch signals a return to more critical events. */
    public OptionalInt worseAgain() {
        return signal(ChartPoint.Stage.WATCHING);
    }

    private OptionalInt signal(ChartPoint.Stage stage) {
        return points.stream()
                .map(Point::chart)
                .filter(point -> point.signal() && point.stage() == stage)
                .mapToInt(ChartPoint::caseNumber)
                .findFirst();
    }
}
