package org.scrubline.progress.web;

import java.util.List;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.TraineeCurve;
import org.springframework.stereotype.Component;

/** Makes the section with the competency curve. */
@Component
class CurveViews {

    private final CurveWords words;
    private final CurveTables tables;
    private final CurveDrawings drawings;
    private final ForecastWords forecasts;
    private final StepPictures pictures;

    CurveViews(
            CurveWords words,
            CurveTables tables,
            CurveDrawings drawings,
            ForecastWords forecasts,
            StepPictures pictures) {
        this.words = words;
        this.tables = tables;
        this.drawings = drawings;
        this.forecasts = forecasts;
        this.pictures = pictures;
    }

    CurveView of(TraineeCurve curve, ProcedureProgress progress) {
        return new CurveView(
                words.reasons(curve, progress, true),
                curve.shown() ? numbers(curve, progress) : null,
                words.sources(curve, progress));
    }

    private CurveView.Numbers numbers(TraineeCurve curve, ProcedureProgress progress) {
        List<ModelledStep> steps = ModelledStep.of(curve, progress);
        return new CurveView.Numbers(
                words.summary(curve),
                drawings.draw(curve),
                tables.cases(curve),
                words.strength(curve.model().evidence()),
                tables.steps(curve, steps),
                tables.nextCase(curve),
                words.reasons(curve, progress, false),
                forecasts.sentences(curve),
                pictures.panel(curve, steps));
    }
}
