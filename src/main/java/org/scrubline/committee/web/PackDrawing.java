package org.scrubline.committee.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.scrubline.committee.pack.PackContent.PointLine;

/**
 * The frozen curve as a drawing, in its own units; what is drawn are the numbers in the pack and no others. Coordinates
 * are texts with one decimal.
 *
 * @param levels horizontal lines at shares of 0, 50 and 100 %
 * @param bands polygons of the 90 % band, one a piece of the curve
 * @param lines the curve in pieces, broken where the trainee was away
 * @param strokes one a record, at the height of its raw share
 */
record PackDrawing(
        int width,
        int height,
        String left,
        String right,
        List<Mark> levels,
        List<String> bands,
        List<String> lines,
        List<Stroke> strokes,
        List<Contested> contested,
        List<Square> awaiting,
        List<Gap> gaps,
        List<Mark> ticks) {

    private static final int WIDTH = 620;
    private static final int HEIGHT = 278;
    private static final double LEFT = 44;
    private static final double RIGHT = 604;
    private static final double TOP = 24;
    private static final double BASE = 224;
    private static final double TICKS = 240;
    private static final double HALF = 3;
    private static final double DIAMOND = 7;
    private static final double SQUARE = 9;

    /** A line or a label. */
    record Mark(String x, String y, String label, String labelY, String anchor) {}

    record Stroke(String x1, String x2, String y) {}

    record Contested(String points, String x, String labelY, String label) {}

    record Square(String x, String y, String side, String label) {}

    record Gap(String x1, String y1, String x2, String y2, String labelX, String label) {}

    static PackDrawing of(List<PointLine> points, CommitteeWords words) {
        int last = points.size();
        return new PackDrawing(
                WIDTH,
                HEIGHT,
                print(LEFT),
                print(RIGHT),
                Stream.of(0, 50, 100)
                        .map(percent -> mark(LEFT, y(percent / 100.0), Integer.toString(percent), "end"))
                        .toList(),
                pieces(points).stream().map(piece -> band(piece, points)).toList(),
                pieces(points).stream()
                        .map(piece -> String.join(" ", edge(piece, points, PointLine::chance)))
                        .toList(),
                strokes(points),
                IntStream.range(0, last)
                        .filter(i -> points.get(i).contested())
                        .mapToObj(i -> diamond(x(i, last), y(points.get(i).chance()), words))
                        .toList(),
                IntStream.range(0, last)
                        .filter(i -> points.get(i).awaitingCountersignature())
                        .mapToObj(i -> square(i, x(i, last), y(points.get(i).chance()), words))
                        .toList(),
                gaps(points, words),
                IntStream.rangeClosed(1, last)
                        .filter(n -> n == 1 || n % (last <= 30 ? 5 : 10) == 0)
                        .mapToObj(n -> mark(x(n - 1, last), TICKS, Integer.toString(n), "middle"))
                        .toList());
    }

    /** Indexes of cases that follow each other without a time away. */
    private static List<List<Integer>> pieces(List<PointLine> points) {
        List<List<Integer>> pieces = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            if (i == 0 || points.get(i).daysAway() > 0) {
                pieces.add(new ArrayList<>());
            }
            pieces.get(pieces.size() - 1).add(i);
        }
        return pieces;
    }

    private static String band(List<Integer> piece, List<PointLine> points) {
        List<String> around = new ArrayList<>(edge(piece, points, PointLine::high));
        List<String> back = edge(piece, points, PointLine::low);
        for (int i = back.size() - 1; i >= 0; i--) {
            around.add(back.get(i));
        }
        return String.join(" ", around);
    }

    private static List<String> edge(List<Integer> piece, List<PointLine> points, ToDoubleFunction<PointLine> share) {
        int last = points.size();
        if (piece.size() == 1) {
            double x = x(piece.get(0), last);
            double y = y(share.applyAsDouble(points.get(piece.get(0))));
            return List.of(at(x - HALF, y), at(x + HALF, y));
        }
        return piece.stream()
                .map(i -> at(x(i, last), y(share.applyAsDouble(points.get(i)))))
                .toList();
    }

    private static List<Stroke> strokes(List<PointLine> points) {
        List<Stroke> strokes = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            double x = x(i, points.size());
            points.get(i)
                    .raw()
                    .forEach(share -> strokes.add(new Stroke(print(x - HALF), print(x + HALF), print(y(share)))));
        }
        return strokes;
    }

    private static Contested diamond(double x, double y, CommitteeWords words) {
        String corners =
                String.join(" ", at(x, y - DIAMOND), at(x + DIAMOND, y), at(x, y + DIAMOND), at(x - DIAMOND, y));
        return new Contested(corners, print(x), print(y - 2 * DIAMOND), words.say("progress.contested"));
    }

    private static Square square(int index, double x, double y, CommitteeWords words) {
        return new Square(
                print(x - SQUARE / 2), print(y - SQUARE / 2), print(SQUARE), words.say("progress.awaiting", index + 1));
    }

    private static List<Gap> gaps(List<PointLine> points, CommitteeWords words) {
        int last = points.size();
        return IntStream.range(1, last)
                .filter(i -> points.get(i).daysAway() > 0)
                .mapToObj(i -> new Gap(
                        print(x(i - 1, last)),
                        print(BASE),
                        print(x(i, last)),
                        print(BASE),
                        print((x(i - 1, last) + x(i, last)) / 2),
                        words.say("progress.chart.away", points.get(i).daysAway())))
                .toList();
    }

    private static double x(int index, int cases) {
        return cases == 1 ? (LEFT + RIGHT) / 2 : LEFT + HALF + index * (RIGHT - LEFT - 2 * HALF) / (cases - 1);
    }

    private static double y(double share) {
        return BASE - share * (BASE - TOP);
    }

    private static Mark mark(double x, double y, String label, String anchor) {
        return new Mark(print(x), print(y), label, print(y), anchor);
    }

    private static String at(double x, double y) {
        return print(x) + "," + print(y);
    }

    private static String print(double coordinate) {
        return String.format(Locale.ROOT, "%.1f", coordinate);
    }
}
