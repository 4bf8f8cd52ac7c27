package org.scrubline.progress.web;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Reads the curve of a page back: once from its table, once from its drawing. */
final class DrawnCurve {

    private static final Pattern LINE = Pattern.compile("<polyline class=\"thread\" points=\"([^\"]+)\"");
    private static final Pattern BAND = Pattern.compile("<polygon class=\"band\" points=\"([^\"]+)\"");
    private static final Pattern ROW = Pattern.compile(
            "<td class=\"figure\">(\\d+) %</td>\\s*<td class=\"figure\">(\\d+) to (\\d+) %</td>\\s*<td class=\"figure\">");

    private static final ChartScale.Frame FRAME = CurveDrawings.FRAME;

    private DrawnCurve() {}

    /** The pieces of the line. */
    static List<String> pieces(String page) {
        return LINE.matcher(page).results().map(piece -> piece.group(1)).toList();
    }

    static List<Double> line(String page) {
        return shares(page, LINE);
    }

    static List<Double> band(String page) {
        return shares(page, BAND);
    }

    /** Chance, lower and upper end of each row that has them, in percent. */
    static List<double[]> rows(String page) {
        return ROW.matcher(page)
                .results()
                .map(row -> new double[] {number(row, 1), number(row, 2), number(row, 3)})
                .toList();
    }

    private static double number(MatchResult row, int group) {
        return Double.parseDouble(row.group(group));
    }

    /** Heights of all points drawn, back in percent. */
    private static List<Double> shares(String page, Pattern pattern) {
        return pattern.matcher(page)
                .results()
                .flatMap(piece -> List.of(piece.group(1).split(" ")).stream())
                .map(point -> Double.parseDouble(point.substring(point.indexOf(',') + 1)))
                .map(y -> 100 * (FRAME.base() - y) / (FRAME.base() - FRAME.top()))
                .toList();
    }
}
