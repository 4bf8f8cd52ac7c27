package org.scrubline.progress.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.platform.Wording;
import org.scrubline.progress.CaseChart;
import org.scrubline.scoring.control.ChartPoint;

/** Draws the path piece by piece: a new piece after a time away, and from 0 again after a signal. */
class ChartPath {

    private static final double LABEL_ROOM = 96;

    private final ChartScale scale;
    private final Wording wording;
    private final List<ChartDrawing.Line> lines = new ArrayList<>();
    private final List<ChartDrawing.Gap> gaps = new ArrayList<>();
    private StringBuilder piece = new StringBuilder();
    private String kind = "thread";
    private double x = Charts.FRAME.left();
    private double y = Charts.FRAME.base();
    private double lastLabel = -LABEL_ROOM;

    ChartPath(CaseChart chart, ChartScale scale, Wording wording) {
        this.scale = scale;
        this.wording = wording;
        add(x, y);
        chart.points().forEach(this::next);
        end();
    }

    private void next(CaseChart.Point point) {
        ChartPoint at = point.chart();
        double nextX = scale.x(at.caseNumber() - 1);
        double nextY = scale.y(at.value());
        if (point.daysAway() > 0) {
            end();
            gaps.add(gap(point.daysAway(), nextX, nextY));
        }
        kind = at.stage() == ChartPoint.Stage.GATHERING ? "thread" : "watch";
        add(nextX, nextY);
        if (at.signal()) {
            end();
            add(nextX, Charts.FRAME.base());
        }
    }

    private void add(double nextX, double nextY) {
        piece.append(piece.isEmpty() ? "" : " ")
                .append(ChartScale.print(nextX))
                .append(',')
                .append(ChartScale.print(nextY));
        x = nextX;
        y = nextY;
    }

    private void end() {
        if (piece.indexOf(" ") > 0) {
            lines.add(new ChartDrawing.Line(kind, piece.toString()));
        }
        piece = new StringBuilder();
    }

    private ChartDrawing.Gap gap(int days, double toX, double toY) {
        double middle = (x + toX) / 2;
        boolean room = middle - lastLabel >= LABEL_ROOM;
        if (room) {
            lastLabel = middle;
        }
        return new ChartDrawing.Gap(
                ChartScale.print(x),
                ChartScale.print(y),
                ChartScale.print(toX),
                ChartScale.print(toY),
                ChartScale.print(middle),
                room ? wording.text("progress.chart.away", days) : "");
    }

    List<ChartDrawing.Line> lines() {
        return List.copyOf(lines);
    }

    List<ChartDrawing.Gap> gaps() {
        return List.copyOf(gaps);
    }
}
