package org.scrubline.progress.web;

import java.util.List;

/**
 * The chart in units of its own drawing, nothing left to reckon. Coordinates are texts with one decimal.
 *
 * @param limitY height of the limit line
 * @param lines the path in pieces; it is broken where the trainee was away and where it starts anew
 * @param gaps dashed lines over a time away
 * @param signals cases at which a limit is reached
 * @param events places of the cases with a critical event
 * @param strokes one a score, its height the level
 * @param ticks case numbers
 */
record ChartDrawing(
        int width,
        int height,
        String left,
        String right,
        String base,
        String limitY,
        String limitLabel,
        String strokeBase,
        String strokeTop,
        String strokeTopLabel,
        String strokeLabel,
        List<Line> lines,
        List<Gap> gaps,
        List<Mark> signals,
        List<Mark> events,
        List<Stroke> strokes,
        List<Mark> ticks) {

    /** Part of the path; {@code kind} is {@code thread} before the signal and {@code watch} after it. */
    record Line(String kind, String points) {}

    /** A time away; {@code label} is empty where a label would run into its neighbour. */
    record Gap(String x1, String y1, String x2, String y2, String labelX, String label) {}

    /** A place with a word; {@code anchor} is start, middle or end. */
    record Mark(String x, String y, String label, String labelY, String anchor) {}

    record Stroke(String x, String y) {}
}
