package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.scrubline.progress.CaseChart;

/** Places of cases and values on the drawing. A time away takes two places more. */
class ChartScale {

    static final int WIDTH = 620;
    static final int HEIGHT = 338;
    static final double LEFT = 44;
    static final double RIGHT = 604;
    static final double TOP = 34;
    static final double BASE = 196;
    static final double STROKE_BASE = 284;
    static final double STROKE_TOP = 244;
    static final double TICKS = 300;
    static final double AWAY_LABELS = 316;

    private static final int FEWEST_PLACES = 12;
    private static final int PLACES_AWAY = 2;
    private static final double HEADROOM = 1.15;

    private final double top;
    private final List<Double> places = new ArrayList<>();
    private final double unit;

    ChartScale(CaseChart chart) {
        double highest = chart.points().stream()
                .mapToDouble(point -> point.chart().value())
                .max()
                .orElse(0);
        this.top = HEADROOM * Math.max(chart.design().limit(), highest);
        double place = 0;
        for (CaseChart.Point point : chart.points()) {
            place += point.daysAway() > 0 ? 1 + PLACES_AWAY : 1;
            places.add(place);
        }
        this.unit = (RIGHT - LEFT) / Math.max(FEWEST_PLACES, place);
    }

    /** Across, of a case counted from 1. */
    double x(int caseNumber) {
        return LEFT + unit * places.get(caseNumber - 1);
    }

    /** Down, of a value of the chart. */
    double y(double value) {
        return BASE - (BASE - TOP) * value / top;
    }

    /** Down, of the end of a stroke; {@code share} is its part of the full height, 0 to 1. */
    static double strokeY(double share) {
        return STROKE_BASE - (STROKE_BASE - STROKE_TOP) * share;
    }

    static String print(double coordinate) {
        return String.format(Locale.ROOT, "%.1f", coordinate);
    }
}
