package org.scrubline.progress.web;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.scrubline.platform.Wording;
import org.scrubline.progress.CountedCase;
import org.scrubline.progress.StepProgress;
import org.scrubline.progress.StepScore;
import org.scrubline.progress.TraineeCurve;
import org.scrubline.scoring.curve.StepCurve;
import org.springframework.stereotype.Component;

/** Draws the steps small and alike. Whole units only: a page holds many of them. */
@Component
class StepPictures {

    static final ChartScale.Frame FRAME = new ChartScale.Frame(160, 92, 26, 158, 10, 84, 0);

    private static final int STROKE = 6;
    private static final int HALF_LONE = 2;

    private final Wording wording;

    StepPictures(Wording wording) {
        this.wording = wording;
    }

    StepPanel panel(TraineeCurve curve, List<ModelledStep> steps) {
        ChartScale scale = CurveDrawings.scale(FRAME, curve.cases());
        return new StepPanel(
                wording.text(
                        "progress.curve.pictures.summary",
                        curve.cases().size(),
                        CurveWords.percent(curve.wantedStep())),
                FRAME.width(),
                FRAME.height(),
                (int) FRAME.left(),
                (int) FRAME.right(),
                (int) FRAME.top(),
                (int) FRAME.base(),
                whole(scale.y(curve.wantedStep())),
                CurveWords.percent(curve.wantedStep()),
                steps.stream().map(step -> picture(step, curve, scale)).toList(),
                steps.stream().map(step -> step.counted().step().code()).toList(),
                rows(curve, steps));
    }

    private StepPicture picture(ModelledStep step, TraineeCurve curve, ChartScale scale) {
        List<StepCurve.Chance> points = step.curve().points();
        List<List<Integer>> pieces = CurveDrawings.pieces(curve.cases());
        return new StepPicture(
                "step-" + step.counted().step().code(),
                step.name(wording),
                now(step),
                pieces.stream().map(piece -> around(piece, points, scale)).collect(Collectors.joining()),
                pieces.stream()
                        .map(piece -> "M" + path(piece, points, scale, Edge.MIDDLE))
                        .collect(Collectors.joining()),
                strokes(step, curve, scale, true),
                strokes(step, curve, scale, false));
    }

    private String now(ModelledStep step) {
        StepCurve.Chance now = step.now();
        return wording.text(
                "progress.curve.pictures.now",
                CurveWords.percent(now.chance()),
                CurveWords.percent(now.low()),
                CurveWords.percent(now.high()),
                step.counted().high(),
                step.counted().scored());
    }

    /** Which edge of the band, or its middle. */
    private enum Edge {
        HIGH,
        MIDDLE,
        LOW;

        double of(StepCurve.Chance point) {
            return switch (this) {
                case HIGH -> point.high();
                case MIDDLE -> point.chance();
                case LOW -> point.low();
            };
        }
    }

    /** Along the upper edge of the band and back along the lower one. */
    private static String around(List<Integer> piece, List<StepCurve.Chance> points, ChartScale scale) {
        List<Integer> back = IntStream.range(0, piece.size())
                .mapToObj(i -> piece.get(piece.size() - 1 - i))
                .toList();
        return "M" + path(piece, points, scale, Edge.HIGH) + "L" + path(back, points, scale, Edge.LOW) + "Z";
    }

    private static String path(List<Integer> cases, List<StepCurve.Chance> points, ChartScale scale, Edge edge) {
        if (cases.size() == 1) {
            int x = whole(scale.x(cases.get(0)));
            String y = "," + whole(scale.y(edge.of(points.get(cases.get(0)))));
            int aside = edge == Edge.LOW ? -HALF_LONE : HALF_LONE;
            return (x - aside) + y + " " + (x + aside) + y;
        }
        return cases.stream()
                .map(i -> whole(scale.x(i)) + "," + whole(scale.y(edge.of(points.get(i)))))
                .collect(Collectors.joining(" "));
    }

    /** Short strokes inwards from the top for high scores, from the foot for the others. */
    private static String strokes(ModelledStep step, TraineeCurve curve, ChartScale scale, boolean high) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < curve.cases().size(); i++) {
            if (levels(step.counted(), curve.cases().get(i).counted())
                    .anyMatch(level -> (level >= StepScore.HIGH) == high)) {
                path.append('M')
                        .append(whole(scale.x(i)))
                        .append(',')
                        .append(whole(high ? FRAME.top() : FRAME.base()))
                        .append(high ? "v" + STROKE : "v-" + STROKE);
            }
        }
        return path.toString();
    }

    private List<StepPanel.Row> rows(TraineeCurve curve, List<ModelledStep> steps) {
        return IntStream.range(0, curve.cases().size())
                .mapToObj(i -> new StepPanel.Row(
                        Integer.toString(i + 1),
                        steps.stream()
                                .map(step -> cell(step, i, curve.cases().get(i).counted()))
                                .toList()))
                .toList();
    }

    private String cell(ModelledStep step, int i, CountedCase counted) {
        StepCurve.Chance point = step.curve().points().get(i);
        String scores = levels(step.counted(), counted).map(String::valueOf).collect(Collectors.joining(", "));
        return wording.text(
                "progress.curve.pictures.cell",
                CurveWords.percent(point.chance()),
                CurveWords.percent(point.low()),
                CurveWords.percent(point.high()),
                scores.isEmpty() ? "–" : scores);
    }

    private static Stream<Integer> levels(StepProgress step, CountedCase counted) {
        return step.scores().stream()
                .filter(score -> score.sheet().caseId().equals(counted.id()))
                .map(StepScore::level)
                .filter(OptionalInt::isPresent)
                .map(OptionalInt::getAsInt);
    }

    private static int whole(double coordinate) {
        return (int) Math.round(coordinate);
    }
}
