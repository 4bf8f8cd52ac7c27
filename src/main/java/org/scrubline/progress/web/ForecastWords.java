package org.scrubline.progress.web;

import java.util.List;
import org.scrubline.platform.Wording;
import org.scrubline.progress.TraineeCurve;
import org.scrubline.scoring.curve.Forecast;
import org.scrubline.scoring.curve.Readiness;
import org.springframework.stereotype.Component;

/** Says in how many further typical cases the evidence might support each standard, or that it cannot be said. */
@Component
class ForecastWords {

    /** Further ahead than this many cases nothing is said. */
    private static final int FARTHEST = 40;

    private final Wording wording;

    ForecastWords(Wording wording) {
        this.wording = wording;
    }

    /** One sentence a standard. */
    List<String> sentences(TraineeCurve curve) {
        return curve.nextCase().stream().map(this::sentence).toList();
    }

    String sentence(Readiness next) {
        Forecast forecast = next.forecast();
        return wording.text(
                "progress.curve.further." + kind(next),
                wording.text(
                        "progress.curve.standard." + next.standard().level(),
                        CurveWords.percent(next.standard().chance())),
                forecast.median(),
                cases(forecast.low()),
                cases(forecast.high()));
    }

    /** What can be said: the end of a message key. */
    private static String kind(Readiness next) {
        Forecast forecast = next.forecast();
        return switch (next.support()) {
            case SUPPORTS -> "SUPPORTS";
            case INSUFFICIENT -> "INSUFFICIENT";
            case NOT_YET -> {
                if (forecast.low() > FARTHEST) {
                    yield "BEYOND";
                }
                if (forecast.median() > FARTHEST) {
                    yield "FAR";
                }
                yield forecast.median() == 0 ? "NEAR" : "CASES";
            }
        };
    }

    private String cases(int number) {
        return number > FARTHEST ? wording.text("progress.curve.further.more", FARTHEST) : Integer.toString(number);
    }
}
