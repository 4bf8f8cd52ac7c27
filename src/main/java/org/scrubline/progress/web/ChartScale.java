package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Places of cases and values on a drawing. A time away takes two places more. */
class ChartScale {

    private static final int FEWEST_PLACES = 12;
    private static final int PLACES_AWAY = 2;

    /**
     * The field of a drawing, in its own units.
     *
     * @param top height of the highest value
     * @param base height of 0
     * @param after places left free behind the last case
     */
    record Frame(int width, int height, double left, double right, double top, double base, int after) {}

    private final Frame frame;
    private final double highest;
    private final List<Double> places = new ArrayList<>();
    private final double unit;

    /**
     * @param daysAway one a case, 0 when it followed without a time away
     * @param highest value at the top of the frame, more than 0
     */
    ChartScale(Frame frame, List<Integer> daysAway, double highest) {
        this.frame = frame;
        this.highest = highest;
        double place = 0;
        for (int days : daysAway) {
            place += days > 0 ? 1 + PLACES_AWAY : 1;
            places.add(place);
        }
        unit = (frame.right() - frame.left()) / Math.max(FEWEST_PLACES, place + frame.after());
    }

    /** Across, of a case counted from 0. */
    double x(int index) {
        return frame.left() + unit * places.get(index);
    }

    /** Down, of a value; 0 stands on the base. */
    double y(double value) {
        return frame.base() - (frame.base() - frame.top()) * value / highest;
    }

    static String print(double coordinate) {
        return String.format(Locale.ROOT, "%.1f", coordinate);
    }
}
