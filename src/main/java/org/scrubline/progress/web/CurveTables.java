package org.scrubline.progress.web;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.scrubline.progress.CountedCase;
import org.scrubline.progress.StepProgress;
import org.scrubline.progress.TraineeCurve;
import org.scrubline.scoring.curve.Readiness;
import org.scrubline.signoff.SignedSheet;
import org.springframework.stereotype.Component;

/** The numbers of the curve, of its steps and of the next case as tables. */
@Component
class CurveTables {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);
    /** Columns of words or dates. */
    private static final Set<String> WORDS = Set.of("ended", "says", "gap");

    private static final Strokes RAW = new Strokes(null);

    private final Wording wording;
    private final GapWords gaps;

    CurveTables(Wording wording, GapWords gaps) {
        this.wording = wording;
        this.gaps = gaps;
    }

    TableView cases(TraineeCurve curve) {
        return new TableView(
                columns("case", "ended", "away", "chance", "band", "raw"),
                IntStream.range(0, curve.cases().size())
                        .mapToObj(i -> caseRow(i + 1, curve.cases().get(i)))
                        .toList());
    }

    private List<Cell> caseRow(int number, TraineeCurve.Point point) {
        SignedSheet first = point.counted().sheets().get(0);
        return List.of(
                new Cell(number(number, point.counted()), "/signed/" + first.id()),
                Cell.of(DAY.format(first.caseEndedAt().atZone(first.signedZone()))),
                Cell.of(point.daysAway() > 0 ? Integer.toString(point.daysAway()) : "–"),
                Cell.of(percent(point.chance())),
                Cell.of(band(point.low(), point.high())),
                Cell.of(RAW.text(point.counted())));
    }

    /** As things stood at the newest case. */
    TableView steps(TraineeCurve curve, List<ModelledStep> steps) {
        return new TableView(
                columns("step", "raw-share", "step-chance", "band", "gap"),
                steps.stream().map(step -> stepRow(curve, step)).toList());
    }

    private List<Cell> stepRow(TraineeCurve curve, ModelledStep step) {
        StepProgress counted = step.counted();
        return List.of(
                Cell.of(step.name(wording)),
                Cell.of(wording.text("progress.share", Percent.of(counted), counted.high(), counted.scored())),
                Cell.of(percent(step.now().chance())),
                Cell.of(band(step.now().low(), step.now().high())),
                Cell.of(gaps.reason(curve, step)));
    }

    TableView nextCase(TraineeCurve curve) {
        return new TableView(
                columns("standard", "whole-case", "range", "assurance", "says"),
                curve.nextCase().stream().map(this::standardRow).toList());
    }

    private List<Cell> standardRow(Readiness next) {
        return List.of(
                Cell.of(wording.text(
                        "progress.curve.standard." + next.standard().level(),
                        CurveWords.percent(next.standard().chance()))),
                Cell.of(percent(next.chance())),
                Cell.of(band(next.low(), next.high())),
                Cell.of(percent(next.assurance())),
                Cell.of(wording.text("progress.curve.says." + next.support())));
    }

    private List<Column> columns(String first, String... others) {
        List<Column> columns = new ArrayList<>();
        columns.add(new Column(wording.text("progress.curve.column." + first), false));
        for (String key : others) {
            columns.add(new Column(wording.text("progress.curve.column." + key), !WORDS.contains(key)));
        }
        return List.copyOf(columns);
    }

    private String percent(double share) {
        return wording.text("progress.curve.percent", CurveWords.percent(share));
    }

    private String band(double low, double high) {
        return wording.text("progress.interval", CurveWords.percent(low), CurveWords.percent(high));
    }

    /** Number of a case, with its signs when it is contested or awaits a countersignature. */
    private String number(int number, CountedCase counted) {
        String text = counted.contested() ? wording.text("progress.case.contested", number) : Integer.toString(number);
        return counted.awaitingCountersignature() ? wording.text("progress.case.awaiting", text) : text;
    }
}
