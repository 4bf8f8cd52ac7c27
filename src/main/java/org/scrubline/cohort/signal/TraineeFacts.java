package org.scrubline.cohort.signal;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.scrubline.scoring.curve.CompetencyCurve;
import org.scrubline.scoring.curve.Flag;

/**
 * What is known of one trainee across procedures.
 *
 * @param forms signed sheets, oldest case first
 * @param course level of each scored case, oldest first
 * @param ended ends of all cases, signed or not, oldest first
 * @param never sheets that were not signed before they closed
 */
record TraineeFacts(
        String trainee,
        List<SignedForm> forms,
        List<Point> course,
        List<OwnStep> steps,
        List<Flag> flags,
        List<Instant> ended,
        int never) {

    /**
     * One case on the course.
     *
     * @param level logit of the chance of level 4 or 5 on the average step in a plain case, over all days, as the mean
     *     supervisor would score it
     */
    record Point(Instant endedAt, double level) {}

    /** A step against the trainee's other steps, in logits; {@code seen} is how often it was scored. */
    record OwnStep(String code, int seen, double effect, double sd) {}

    static TraineeFacts of(ProgrammeRecord programme, WholeProgramme whole, String trainee) {
        List<SignedForm> forms = programme.about(trainee).stream()
                .sorted(Comparator.comparing(SignedForm::endedAt).thenComparing(SignedForm::id))
                .toList();
        CompetencyCurve curve = whole.curve(trainee);
        double overDays = whole.overDays();
        return new TraineeFacts(
                trainee,
                forms,
                curve.points().stream()
                        .map(point -> new Point(
                                forms.stream()
                                        .filter(form -> form.caseId().equals(point.caseId()))
                                        .findFirst()
                                        .orElseThrow()
                                        .endedAt(),
                                point.level() * overDays))
                        .toList(),
                curve.steps().stream()
                        .map(step -> new OwnStep(step.step(), step.seen(), step.effect(), step.effectSd()))
                        .toList(),
                whole.flags(trainee, curve),
                programme.ended(trainee),
                programme.never(trainee));
    }

    /** Mean level of the cases from one place to another. */
    double level(int from, int to) {
        return course.subList(Math.max(0, from), Math.min(course.size(), to)).stream()
                .mapToDouble(Point::level)
                .average()
                .orElse(Double.NaN);
    }
}
