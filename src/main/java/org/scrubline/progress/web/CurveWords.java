package org.scrubline.progress.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.scrubline.platform.Wording;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.TraineeCurve;
import org.scrubline.scoring.curve.Evidence;
import org.scrubline.signoff.SignedSheet;
import org.springframework.stereotype.Component;

/** Says in sentences what the curve rests on and what it lacks. */
@Component
class CurveWords {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", Locale.UK);

    private final Wording wording;

    CurveWords(Wording wording) {
        this.wording = wording;
    }

    /** What is short before a modelled number is shown, or else before it may support a proposal. */
    List<String> reasons(TraineeCurve curve, ProcedureProgress progress, boolean hides) {
        return curve.model().evidence().reasons().stream()
                .filter(reason -> reason.kind().hides() == hides)
                .map(reason -> reason(reason, progress))
                .toList();
    }

    private String reason(Evidence.Reason reason, ProcedureProgress progress) {
        return wording.text(
                "progress.curve.short." + reason.kind(), reason.have(), reason.need(), subject(reason, progress));
    }

    /** The step's name, or that of the supervisor who signed. */
    private static String subject(Evidence.Reason reason, ProcedureProgress progress) {
        return progress.step(reason.subject())
                .map(step -> step.step().name())
                .orElseGet(() -> progress.evidence().sheets().stream()
                        .filter(sheet -> sheet.signerId().toString().equals(reason.subject()))
                        .map(SignedSheet::signerName)
                        .findFirst()
                        .orElse(""));
    }

    String strength(Evidence evidence) {
        return wording.text("progress.curve.strength." + evidence.strength(), Math.round(100 * evidence.index()));
    }

    String summary(TraineeCurve curve) {
        TraineeCurve.Point last = curve.cases().get(curve.cases().size() - 1);
        return wording.text(
                "progress.curve.summary",
                curve.cases().size(),
                percent(last.chance()),
                percent(last.low()),
                percent(last.high()));
    }

    String sources(TraineeCurve curve, ProcedureProgress progress) {
        List<SignedSheet> sheets = progress.evidence().sheets();
        ZoneId zone = sheets.get(sheets.size() - 1).signedZone();
        return wording.text(
                "progress.curve.sources",
                curve.model().engineVersion(),
                print(curve.until(), zone),
                curve.fittedSheets(),
                print(curve.fittedUntil(), zone),
                wording.text(curve.ownFit() ? "progress.curve.fit.own" : "progress.curve.fit.start"));
    }

    private static String print(Instant instant, ZoneId zone) {
        return MOMENT.format(instant.atZone(zone));
    }

    static int percent(double share) {
        return (int) Math.round(100 * share);
    }
}
