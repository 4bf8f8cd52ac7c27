package org.scrubline.cohort.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.scrubline.scoring.curve.Flag;

/** What stands out in a way of scoring; nothing below ten sheets on four trainees. Limits are this project's own. */
final class ScorerRules {

    /** Levels by which the same work must be scored apart from colleagues; the engine must have noticed too. */
    static final double OFFSET = 0.25;

    private static final double OFFSET_ERRORS = 3;

    /** Share of scores on two neighbouring levels from which the range is narrow. */
    static final double NARROW = 0.97;

    /** Share of sheets with one level for all steps worth a look. */
    static final double ONE_LEVEL = 0.25;

    /** Share of late sheets worth a look. */
    static final double LATE = 0.5;

    private ScorerRules() {}

    static List<Signal> of(ScorerFigures figures, List<Flag> flags, ProgrammeRecord programme) {
        List<Signal> found = new ArrayList<>();
        if (!figures.enough()) {
            return found;
        }
        List<SignedForm> own = programme.by(figures.scorer());
        boolean differs = flags.stream()
                .anyMatch(flag -> flag.kind() == Flag.Kind.SCORES_DIFFER
                        && flag.subject().equals(figures.scorer())
                        && (flag.value() > 0) == (figures.offset() < 0));
        double apart = Math.abs(figures.offset());
        if (differs && apart >= OFFSET && apart > OFFSET_ERRORS * figures.offsetError()) {
            Signal.Kind kind = figures.offset() < 0 ? Signal.Kind.SCORES_LOWER : Signal.Kind.SCORES_HIGHER;
            found.add(Signal.of(kind, figures.scorer(), List.of(apart, (double) figures.sheets()), own));
        }
        share(found, Signal.Kind.NARROW_RANGE, figures, figures.twoLevels(), NARROW, own, form -> true);
        share(
                found,
                Signal.Kind.ONE_LEVEL,
                figures,
                figures.oneLevelShare(),
                ONE_LEVEL,
                own,
                form -> form.canDiffer() && form.oneLevel());
        share(
                found,
                Signal.Kind.SIGNS_LATE,
                figures,
                figures.lateShare(),
                LATE,
                own,
                form -> form.delay().compareTo(programme.limits().late()) > 0);
        return found;
    }

    private static void share(
            List<Signal> found,
            Signal.Kind kind,
            ScorerFigures figures,
            double share,
            double limit,
            List<SignedForm> own,
            Predicate<SignedForm> which) {
        if (share > limit) {
            List<SignedForm> forms = own.stream().filter(which).toList();
            found.add(Signal.of(kind, figures.scorer(), List.of(share, (double) figures.sheets()), forms));
        }
    }
}
