package org.scrubline.progress.web;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Reads one small picture of the page back, and its column of the table.
 *
 * @param pieces pieces of the line
 * @param line heights of its points in percent
 * @param band heights around the band in percent, piece by piece
 * @param cells of the step's column, oldest case first
 */
record DrawnSteps(
        int pieces,
        List<Double> line,
        List<Double> band,
        long strokesAtTheTop,
        long strokesAtTheFoot,
        List<Cell> cells) {

    private static final Pattern PICTURE =
            Pattern.compile("<figure class=\"chart small\">.*?</figure>", Pattern.DOTALL);
    private static final Pattern POINT = Pattern.compile("\\d+,(\\d+)");
    private static final Pattern HEAD = Pattern.compile("<th scope=\"col\">(TF\\d+)</th>");
    private static final Pattern ROW = Pattern.compile("<tr><th scope=\"row\">\\d+</th>(.*?)</tr>");
    private static final Pattern CELL = Pattern.compile("<td>(\\d+) \\((\\d+)–(\\d+)\\) (\\d|–)</td>");

    /** One case: percent, and the level scored, 0 for none. */
    record Cell(int chance, int low, int high, int level) {}

    static List<String> pictures(String page) {
        return PICTURE.matcher(page).results().map(MatchResult::group).toList();
    }

    static DrawnSteps of(String page, String code) {
        String picture = pictures(page).stream()
                .filter(one -> one.contains("<figcaption>" + code + " "))
                .findFirst()
                .orElseThrow();
        List<String> knots = Pattern.compile("class=\"knot\" d=\"([^\"]*)\"")
                .matcher(picture)
                .results()
                .map(knot -> knot.group(1))
                .toList();
        String line = path(picture, "thread");
        return new DrawnSteps(
                count(line, "M"),
                heights(line),
                heights(path(picture, "band")),
                count(knots.get(0), "M"),
                count(knots.get(1), "M"),
                column(page.substring(page.indexOf("id=\"step-cases\"")), code));
    }

    private static List<Cell> column(String table, String code) {
        List<String> codes =
                HEAD.matcher(table).results().map(head -> head.group(1)).toList();
        return ROW.matcher(table)
                .results()
                .map(row -> CELL.matcher(row.group(1)).results().toList().get(codes.indexOf(code)))
                .map(cell -> new Cell(number(cell, 1), number(cell, 2), number(cell, 3), number(cell, 4)))
                .toList();
    }

    private static int number(MatchResult cell, int group) {
        return cell.group(group).equals("–") ? 0 : Integer.parseInt(cell.group(group));
    }

    private static String path(String picture, String kind) {
        int from = picture.indexOf("class=\"" + kind + "\" d=\"") + kind.length() + 12;
        return picture.substring(from, picture.indexOf('"', from));
    }

    private static int count(String path, String letter) {
        return path.length() - path.replace(letter, "").length();
    }

    private static List<Double> heights(String path) {
        ChartScale.Frame frame = StepPictures.FRAME;
        return POINT.matcher(path)
                .results()
                .map(point -> Double.parseDouble(point.group(1)))
                .map(y -> 100 * (frame.base() - y) / (frame.base() - frame.top()))
                .toList();
    }
}
