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

    private static final double LABEL_ABOVE = 10;
    private static final double EVENT_BELOW = 16;
    private static final double STROKES_APART = 3;
    private static final double MIDDLE = (ChartScale.LEFT + ChartScale.RIGHT) / 2;

    private final Wording wording;

    Charts(Wording wording) {
        this.wording = wording;
    }

    ChartDrawing draw(CaseChart chart, Strokes strokes, String strokeLabel) {
        ChartScale scale = new ChartScale(chart);
        ChartPath path = new ChartPath(chart, scale, wording);
        return new ChartDrawing(
                ChartScale.WIDTH,
                ChartScale.HEIGHT,
                ChartScale.print(ChartScale.LEFT),
                ChartScale.print(ChartScale.RIGHT),
                ChartScale.print(ChartScale.BASE),
                ChartScale.print(scale.y(chart.design().limit())),
                wording.text("progress.chart.limit", chart.design().limit()),
                ChartScale.print(ChartScale.STROKE_BASE),
                ChartScale.print(ChartScale.STROKE_TOP),
                strokes.step() == null ? "100" : "5",
                strokeLabel,
                path.lines(),
                path.gaps(),
                signals(chart, scale),
                events(chart, scale),
                strokes(chart, scale, strokes),
                ticks(chart, scale));
    }

    private List<ChartDrawing.Mark> signals(CaseChart chart, ChartScale scale) {
        return points(chart)
                .filter(ChartPoint::signal)
                .map(point -> {
                    double x = scale.x(point.caseNumber());
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
                .map(point -> below(scale.x(point.chart().caseNumber()), ChartScale.BASE + EVENT_BELOW, "×"))
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
                        ChartScale.print(scale.x(point.chart().caseNumber()) + aside),
                        ChartScale.print(ChartScale.strokeY(heights.get(i)))));
            }
        }
        return drawn;
    }

    private static List<ChartDrawing.Mark> ticks(CaseChart chart, ChartScale scale) {
        int every = chart.points().size() <= 30 ? 5 : 10;
        return points(chart)
                .map(ChartPoint::caseNumber)
                .filter(number -> number == 1 || number % every == 0)
                .map(number -> below(scale.x(number), ChartScale.TICKS, number.toString()))
                .toList();
    }

    private static ChartDrawing.Mark below(double x, double y, String label) {
        return new ChartDrawing.Mark(ChartScale.print(x), ChartScale.print(y), label, ChartScale.print(y), "middle");
    }

    private static Stream<ChartPoint> points(CaseChart chart) {
        return chart.points().stream().map(CaseChart.Point::chart);
    }
}
