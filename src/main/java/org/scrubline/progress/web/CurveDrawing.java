package org.scrubline.progress.web;

import java.util.List;

/**
 * The curve in units of its own drawing, nothing left to reckon. Coordinates are texts with one decimal.
 *
 * @param levels horizontal lines at shares of 0, 50 and 100 %
 * @param bands polygons of the 90 % band, one a piece of the curve
 * @param lines the curve in pieces, broken where the trainee was away
 * @param strokes one a case, at the height of its raw share
 * @param contested a diamond round each contested case
 * @param awaiting a square round each case that awaits a countersignature
 * @param gaps times away
 * @param ticks case numbers
 */
record CurveDrawing(
        int width,
        int height,
        String left,
        String right,
        List<ChartDrawing.Mark> levels,
        List<String> bands,
        List<String> lines,
        List<Stroke> strokes,
        List<Contested> contested,
        List<Square> awaiting,
        List<ChartDrawing.Gap> gaps,
        List<ChartDrawing.Mark> ticks) {

    /** The corners of a diamond on the curve, and its label. */
    record Contested(String points, String x, String labelY, String label) {}

    /** Left upper corner and side of a square on the curve, and what it says to whoever points at it. */
    record Square(String x, String y, String side, String label) {}

    /** A short level stroke. */
    record Stroke(String x1, String x2, String y) {}
}
