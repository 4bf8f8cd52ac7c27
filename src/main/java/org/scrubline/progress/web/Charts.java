package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.scrubline.platform.Wording;
import org.scrubline.progress.CaseChart;
import org.scrubline.scoring.control.ChartPoint;
import org.springframework.stereotype.Component;

/** Draws the chart of critical events with the strokes under it. */
@Component
class Charts {

    static final ChartScale.Frame FRAME = new ChartScale.Frame(620, 338, 44, 604, 34, 196, 0);

    private static final double HEADROOM = 1.15;
    private static final double STROKE_BASE = 284;
    private static final double STROKE_TOP = 244;
    private static final double TICKS = 300;
    private static final double LABEL_ABOVE = 10;
    private static final double EVENT_BELOW = 16;
    private static final double STROKES_APART = 3;
    private static final double MIDDLE = (FRAME.left() + FRAME.right()) / 2;

    private final Wording wording;

    Charts(Wording wording) {
        this.wording = wording;
    }

    ChartDrawing draw(CaseChart chart, Strokes strokes, String strokeLabel) {
        ChartScale scale = scale(chart);
        ChartPath path = new ChartPath(chart, scale, wording);
        return new ChartDrawing(
                FRAME.width(),
                FRAME.height(),
                ChartScale.print(FRAME.left()),
                ChartScale.print(FRAME.right()),
                ChartScale.print(FRAME.base()),
                ChartScale.print(scale.y(chart.design().limit())),
                wording.text("progress.chart.limit", chart.design().limit()),
                ChartScale.print(STROKE_BASE),
                ChartScale.print(STROKE_TOP),
                strokes.step() == null ? "100" : "5",
                strokeLabel,
                path.lines(),
                path.gaps(),
                signals(chart, scale),
                events(chart, scale),
                strokes(chart, scale, strokes),
                ticks(chart, scale));
    }

    private static ChartScale scale(CaseChart chart) {
        double highest = points(chart).mapToDouble(ChartPoint::value).max().orElse(0);
        return new ChartScale(
                FRAME,
                chart.points().stream().map(CaseChart.Point::daysAway).toList(),
                HEADROOM * Math.max(chart.design().limit(), highest));
    }

    /** Down, of the end of a stroke; {@code share} is its part of the full height, 0 to 1. */
    private static double strokeY(double share) {
        return STROKE_BASE - (STROKE_BASE - STROKE_TOP) * share;
    }

    private List<ChartDrawing.Mark> signals(CaseChart chart, ChartScale scale) {
        return points(chart)
                .filter(ChartPoint::signal)
                .map(point -> {
                    double x = scale.x(point.caseNumber() - 1);
                    double y = scale.y(point.value());
                    String key = point.stage() == ChartPoint.Stage.GATHERING
                            ? "progress.chart.signal"
                            : "progress.chart.again";
                    return new ChartDrawing.Mark(
                            ChartScale.print(x),
                            ChartScale.print(y),
                            wording.text(key, point.caseNumber()),
                            ChartScale.print(y - LABEL_ABOVE),
                            x > MIDDLE ? "end" : "start");
                })
                .toList();
    }

    private static List<ChartDrawing.Mark> events(CaseChart chart, ChartScale scale) {
        return chart.points().stream()
                .filter(point -> point.counted().criticalEvent())
                .map(point -> below(scale.x(point.chart().caseNumber() - 1), FRAME.base() + EVENT_BELOW, "×"))
                .toList();
    }

    /** Two scores of one case stand side by side. */
    private static List<ChartDrawing.Stroke> strokes(CaseChart chart, ChartScale scale, Strokes strokes) {
        List<ChartDrawing.Stroke> drawn = new ArrayList<>();
        for (CaseChart.Point point : chart.points()) {
            List<Double> heights = strokes.heights(point.counted());
            for (int i = 0; i < heights.size(); i++) {
                double aside = STROKES_APART * (i - (heights.size() - 1) / 2.0);
                drawn.add(new ChartDrawing.Stroke(
                        ChartScale.print(scale.x(point.chart().caseNumber() - 1) + aside),
                        ChartScale.print(strokeY(heights.get(i)))));
            }
        }
        return drawn;
    }

    private static List<ChartDrawing.Mark> ticks(CaseChart chart, ChartScale scale) {
        int every = chart.points().size() <= 30 ? 5 : 10;
        return points(chart)
                .map(ChartPoint::caseNumber)
                .filter(number -> number == 1 || number % every == 0)
                .map(number -> below(scale.x(number - 1), TICKS, number.toString()))
                .toList();
    }

    private static ChartDrawing.Mark below(double x, double y, String label) {
        return new ChartDrawing.Mark(ChartScale.print(x), ChartScale.print(y), label, ChartScale.print(y), "middle");
    }

    private static Stream<ChartPoint> points(CaseChart chart) {
        return chart.points().stream().map(CaseChart.Point::chart);
    }
}
