package org.scrubline.progress.web;

import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.TraineeCurve;
import org.springframework.stereotype.Component;

/** Makes the section with the competency curve. */
@Component
class CurveViews {

    private final CurveWords words;
    private final CurveTables tables;
    private final CurveDrawings drawings;

    CurveViews(CurveWords words, CurveTables tables, CurveDrawings drawings) {
        this.words = words;
        this.tables = tables;
        this.drawings = drawings;
    }

    CurveView of(TraineeCurve curve, ProcedureProgress progress) {
        return new CurveView(
                words.reasons(curve, progress, true),
                curve.shown() ? numbers(curve, progress) : null,
                words.sources(curve, progress));
    }

    private CurveView.Numbers numbers(TraineeCurve curve, ProcedureProgress progress) {
        return new CurveView.Numbers(
                words.summary(curve),
                drawings.draw(curve),
                tables.cases(curve),
                words.strength(curve.model().evidence()),
                tables.steps(curve, progress),
                tables.nextCase(curve),
                words.reasons(curve, progress, false));
    }
}
