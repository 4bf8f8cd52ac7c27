package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.progress.TraineeCurve;

/** Places of cases and shares on the drawing of the curve. A time away takes two places more. */
class CurveScale {

    static final int WIDTH = 620;
    static final int HEIGHT = 278;
    static final double LEFT = 44;
    static final double RIGHT = 604;
    static final double TOP = 24;
    static final double BASE = 224;
    static final double TICKS = 240;
    static final double AWAY_LABELS = 256;

    private static final int FEWEST_PLACES = 12;
    private static final int PLACES_AWAY = 2;

    private final List<Double> places = new ArrayList<>();
    private final double unit;

    CurveScale(List<TraineeCurve.Point> cases) {
        double place = 0;
        for (TraineeCurve.Point point : cases) {
            place += point.daysAway() > 0 ? 1 + PLACES_AWAY : 1;
            places.add(place);
        }
        unit = (RIGHT - LEFT) / Math.max(FEWEST_PLACES, place + 1);
    }

    /** Across, of a case counted from 0. */
    double x(int index) {
        return LEFT + unit * places.get(index);
    }

    /** Down, of a share 0 to 1. */
    static double y(double share) {
        return BASE - (BASE - TOP) * share;
    }
}
