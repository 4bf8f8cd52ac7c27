package org.scrubline.outcome.web;

import java.util.List;

/**
 * A funnel in units of its own drawing. Coordinates are texts with one decimal.
 *
 * @param targetY height of the programme's own rate
 * @param limits curves of what chance alone leaves, each with its kind, {@code near} or {@code far}
 * @param points one a trainee, without a name
 * @param ticks numbers of cases
 */
record FunnelDrawing(
        int width,
        int height,
        String left,
        String right,
        String top,
        String base,
        String targetY,
        List<Limit> limits,
        List<Point> points,
        List<Tick> ticks) {

    /** A curve. */
    record Limit(String kind, String points) {}

    /** A trainee's rate over the number of cases. */
    record Point(String x, String y) {}

    /** A number under the axis. */
    record Tick(String x, String label) {}
}
