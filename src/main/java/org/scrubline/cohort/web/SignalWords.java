package org.scrubline.cohort.web;

import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.SignalReport;
import org.scrubline.cohort.signal.Signal;
import org.scrubline.cohort.signal.SignedForm;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Puts a signal into words: why, what would change this, and the sheets it rests on. */
@Component
class SignalWords {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);
    private static final double PERCENT = 100;

    private final Wording wording;

    SignalWords(Wording wording) {
        this.wording = wording;
    }

    SignalPage.Line line(SignalReport report, Signal signal, String title, boolean linked) {
        String key = "signals." + signal.kind();
        List<SignalPage.Sheet> evidence = sheets(report, signal);
        return new SignalPage.Line(
                title,
                linked ? href(signal) : null,
                wording.text(key, figures(report, signal)),
                wording.text(key + ".change"),
                alarms(signal.kind()),
                wording.text("signals.sheets", evidence.size()),
                evidence);
    }

    /** How often the rule speaks in vain; null where there is nothing to be wrong about. */
    private @Nullable String alarms(Signal.Kind kind) {
        return kind.without() == 0 ? null : wording.text("signals.alarms", kind.falseAlarms(), kind.without());
    }

    /** The heading of a signal: who, and what it is about. */
    String title(SignalReport report, Signal signal) {
        return wording.text(
                "signals.title.of", report.name(signal.about()), wording.text("signals." + signal.kind() + ".name"));
    }

    /** The same, with a word where training in this programme is over. */
    String titleOfTrainee(SignalReport report, Signal signal) {
        return report.training().contains(signal.about())
                ? title(report, signal)
                : wording.text(
                        "signals.title.ended",
                        report.name(signal.about()),
                        wording.text("signals." + signal.kind() + ".name"));
    }

    /** What it is about alone. */
    String title(Signal signal) {
        return wording.text("signals." + signal.kind() + ".name");
    }

    private static String href(Signal signal) {
        return signal.procedure().isEmpty()
                ? "/progress/" + signal.about()
                : "/progress/" + signal.about() + "?procedure=" + signal.procedure();
    }

    private Object[] figures(SignalReport report, Signal signal) {
        List<Double> f = signal.figures();
        return switch (signal.kind()) {
            case PLATEAU -> new Object[] {whole(f, 0), percent(f, 1), percent(f, 2)};
            case REGRESSION -> new Object[] {percent(f, 0), percent(f, 1), whole(f, 2)};
            case BREAK -> new Object[] {whole(f, 0), whole(f, 1), back(f)};
            case STEPS_BEHIND -> new Object[] {steps(report, signal)};
            case FEW_CASES ->
                new Object[] {
                    f.get(0),
                    f.get(1),
                    whole(f, 2),
                    report.settings().gapShown().toDays()
                };
            case SCORED_LATE ->
                new Object[] {
                    whole(f, 0), whole(f, 1), report.settings().lateAfter().toHours()
                };
            case UNSCORED ->
                new Object[] {
                    whole(f, 0), whole(f, 1), report.settings().closedAfter().toDays()
                };
            case INSUFFICIENT ->
                new Object[] {
                    whole(f, 0),
                    whole(f, 1),
                    percent(f, 2),
                    report.settings().supportsCases(),
                    report.settings().supportsScorers(),
                    report.settings().mostByOne()
                };
            case SUPPORTED -> new Object[] {percent(f, 0), percent(f, 1)};
            case SCORES_LOWER, SCORES_HIGHER -> new Object[] {f.get(0), whole(f, 1)};
            case NARROW_RANGE, ONE_LEVEL -> new Object[] {percent(f, 0), whole(f, 1)};
            case SIGNS_LATE ->
                new Object[] {
                    percent(f, 0), whole(f, 1), report.settings().lateAfter().toHours()
                };
        };
    }

    /** Whether the level is back; where nothing was scored on one side, that is said instead. */
    private String back(List<Double> figures) {
        double before = figures.get(2);
        double now = figures.get(3);
        if (Double.isNaN(before) || Double.isNaN(now)) {
            return wording.text("signals.BREAK.unknown");
        }
        String key = now >= before ? "signals.BREAK.back" : "signals.BREAK.below";
        return wording.text(key, percent(figures, 2), percent(figures, 3));
    }

    private String steps(SignalReport report, Signal signal) {
        return signal.steps().stream()
                .map(code ->
                        wording.text("progress.step.name", code, report.steps().getOrDefault(code, "")))
                .collect(Collectors.joining(", "));
    }

    private static long whole(List<Double> figures, int at) {
        return Math.round(figures.get(at));
    }

    private static long percent(List<Double> figures, int at) {
        return Math.round(PERCENT * figures.get(at));
    }

    private List<SignalPage.Sheet> sheets(SignalReport report, Signal signal) {
        Map<String, SignedForm> forms = new HashMap<>();
        report.read().forms().forEach(form -> forms.put(form.id(), form));
        return signal.forms().stream()
                .flatMap(id -> Optional.ofNullable(forms.get(id)).stream())
                .map(form -> new SignalPage.Sheet(
                        "/signed/" + form.id(),
                        wording.text(
                                "signals.sheet",
                                DAY.format(
                                        form.endedAt().atZone(report.programme().zone())),
                                form.procedure())))
                .toList();
    }
}
