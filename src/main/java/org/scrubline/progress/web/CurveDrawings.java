package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.scrubline.platform.Wording;
import org.scrubline.progress.TraineeCurve;
import org.springframework.stereotype.Component;

/** Draws the curve with its band and, on the same scale, the raw share of each case. */
@Component
class CurveDrawings {

    static final ChartScale.Frame FRAME = new ChartScale.Frame(620, 278, 44, 604, 24, 224, 1);

    private static final double TICKS = 240;
    /** Half the width of a stroke, and of a piece of the curve that holds one case only. */
    private static final double HALF_STROKE = 3;

    /** From the middle of a diamond to its corners. */
    private static final double DIAMOND = 7;

    /** Side of a square. */
    private static final double SQUARE = 9;

    private static final Strokes RAW = new Strokes(null);

    private final Wording wording;

    CurveDrawings(Wording wording) {
        this.wording = wording;
    }

    CurveDrawing draw(TraineeCurve curve) {
        List<TraineeCurve.Point> cases = curve.cases();
        ChartScale scale = scale(FRAME, cases);
        List<List<Integer>> pieces = pieces(cases);
        return new CurveDrawing(
                FRAME.width(),
                FRAME.height(),
                ChartScale.print(FRAME.left()),
                ChartScale.print(FRAME.right()),
                Stream.of(0, 50, 100).map(percent -> level(percent, scale)).toList(),
                pieces.stream().map(piece -> band(piece, cases, scale)).toList(),
                pieces.stream()
                        .map(piece -> String.join(" ", edge(piece, cases, scale, TraineeCurve.Point::chance)))
                        .toList(),
                strokes(cases, scale),
                contested(cases, scale),
                awaiting(cases, scale),
                gaps(cases, scale),
                ticks(cases.size(), scale));
    }

    /** Cases across, shares 0 to 1 upwards. */
    static ChartScale scale(ChartScale.Frame frame, List<TraineeCurve.Point> cases) {
        return new ChartScale(
                frame, cases.stream().map(TraineeCurve.Point::daysAway).toList(), 1);
    }

    /** Indexes of cases that follow each other without a time away. */
    static List<List<Integer>> pieces(List<TraineeCurve.Point> cases) {
        List<List<Integer>> pieces = new ArrayList<>();
        for (int i = 0; i < cases.size(); i++) {
            if (i == 0 || cases.get(i).daysAway() > 0) {
                pieces.add(new ArrayList<>());
            }
            pieces.get(pieces.size() - 1).add(i);
        }
        return pieces;
    }

    /** Along the upper edge and back along the lower one. */
    private static String band(List<Integer> piece, List<TraineeCurve.Point> cases, ChartScale scale) {
        List<String> around = new ArrayList<>(edge(piece, cases, scale, TraineeCurve.Point::high));
        List<String> back = edge(piece, cases, scale, TraineeCurve.Point::low);
        for (int i = back.size() - 1; i >= 0; i--) {
            around.add(back.get(i));
        }
        return String.join(" ", around);
    }

    private static List<String> edge(
            List<Integer> piece,
            List<TraineeCurve.Point> cases,
            ChartScale scale,
            ToDoubleFunction<TraineeCurve.Point> share) {
        if (piece.size() == 1) {
            double x = scale.x(piece.get(0));
            double y = scale.y(share.applyAsDouble(cases.get(piece.get(0))));
            return List.of(at(x - HALF_STROKE, y), at(x + HALF_STROKE, y));
        }
        return piece.stream()
                .map(i -> at(scale.x(i), scale.y(share.applyAsDouble(cases.get(i)))))
                .toList();
    }

    private static List<CurveDrawing.Stroke> strokes(List<TraineeCurve.Point> cases, ChartScale scale) {
        List<CurveDrawing.Stroke> strokes = new ArrayList<>();
        for (int i = 0; i < cases.size(); i++) {
            double x = scale.x(i);
            for (double share : RAW.heights(cases.get(i).counted())) {
                strokes.add(new CurveDrawing.Stroke(
                        ChartScale.print(x - HALF_STROKE),
                        ChartScale.print(x + HALF_STROKE),
                        ChartScale.print(scale.y(share))));
            }
        }
        return strokes;
    }

    private List<CurveDrawing.Contested> contested(List<TraineeCurve.Point> cases, ChartScale scale) {
        return IntStream.range(0, cases.size())
                .filter(i -> cases.get(i).counted().contested())
                .mapToObj(i -> diamond(scale.x(i), scale.y(cases.get(i).chance())))
                .toList();
    }

    private List<CurveDrawing.Square> awaiting(List<TraineeCurve.Point> cases, ChartScale scale) {
        return IntStream.range(0, cases.size())
                .filter(i -> cases.get(i).counted().awaitingCountersignature())
                .mapToObj(i -> new CurveDrawing.Square(
                        ChartScale.print(scale.x(i) - SQUARE / 2),
                        ChartScale.print(scale.y(cases.get(i).chance()) - SQUARE / 2),
                        ChartScale.print(SQUARE),
                        wording.text("progress.awaiting", i + 1)))
                .toList();
    }

    private CurveDrawing.Contested diamond(double x, double y) {
        String points =
                String.join(" ", at(x, y - DIAMOND), at(x + DIAMOND, y), at(x, y + DIAMOND), at(x - DIAMOND, y));
        return new CurveDrawing.Contested(
                points, ChartScale.print(x), ChartScale.print(y - 2 * DIAMOND), wording.text("progress.contested"));
    }

    private List<ChartDrawing.Gap> gaps(List<TraineeCurve.Point> cases, ChartScale scale) {
        List<ChartDrawing.Gap> gaps = new ArrayList<>();
        for (int i = 1; i < cases.size(); i++) {
            int days = cases.get(i).daysAway();
            if (days > 0) {
                double from = scale.x(i - 1);
                double to = scale.x(i);
                String base = ChartScale.print(FRAME.base());
                gaps.add(new ChartDrawing.Gap(
                        ChartScale.print(from),
                        base,
                        ChartScale.print(to),
                        base,
                        ChartScale.print((from + to) / 2),
                        wording.text("progress.chart.away", days)));
            }
        }
        return gaps;
    }

    private static List<ChartDrawing.Mark> ticks(int cases, ChartScale scale) {
        int every = cases <= 30 ? 5 : 10;
        return IntStream.rangeClosed(1, cases)
                .filter(number -> number == 1 || number % every == 0)
                .mapToObj(number -> mark(scale.x(number - 1), TICKS, Integer.toString(number), "middle"))
                .toList();
    }

    private static ChartDrawing.Mark level(int percent, ChartScale scale) {
        return mark(FRAME.left(), scale.y(percent / 100.0), Integer.toString(percent), "end");
    }

    private static ChartDrawing.Mark mark(double x, double y, String label, String anchor) {
        return new ChartDrawing.Mark(ChartScale.print(x), ChartScale.print(y), label, ChartScale.print(y), anchor);
    }

    private static String at(double x, double y) {
        return String.format(Locale.ROOT, "%.1f,%.1f", x, y);
    }
}
