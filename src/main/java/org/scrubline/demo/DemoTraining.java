package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.people.Introductions;
import org.scrubline.platform.SignedIn;
import org.scrubline.training.Exercise;
import org.scrubline.training.TrainingDraft;
import org.scrubline.training.TrainingEntry;
import org.scrubline.training.TrainingKind;
import org.scrubline.training.TrainingRecords;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Introduces the supervisors to scoring, and writes what each trainee's first weeks leave in the training record. */
@Component
@Profile("demo")
class DemoTraining {

    private static final Duration WORKING_HOURS = Duration.ofHours(15);
    private static final int BASELINE_DAY = 6;
    private static final int GOAL_DAY = 8;
    private static final int PRACTICE_DAY = 10;
    private static final int ANSWERED_AFTER = 1;

    /** Visits now and then and was not introduced; the page says so. */
    private static final String NOT_INTRODUCED = "S09";

    /** One whose practice of sutures still waits for a supervisor. */
    private static final String WAITS = "T14";

    private final TrainingRecords records;
    private final Introductions introductions;

    DemoTraining(TrainingRecords records, Introductions introductions) {
        this.records = records;
        this.introductions = introductions;
    }

    void plan(Cast cast, DemoPlan plan, Timeline timeline) {
        timeline.at(
                at(plan.begin()),
                () -> DemoCast.SUPERVISORS.stream()
                        .filter(one -> !one.id().equals(NOT_INTRODUCED))
                        .forEach(one -> introductions
                                .record(
                                        cast.director(),
                                        cast.programme().id(),
                                        cast.supervisor(one.id()).personId(),
                                        plan.begin().toString())
                                .orThrow()));
        DemoCast.TRAINEES.forEach(trainee -> plan(cast, trainee, plan, timeline));
    }

    private void plan(Cast cast, DemoCast.Trainee trainee, DemoPlan plan, Timeline timeline) {
        LocalDate first = plan.month(trainee.postings().get(0).firstMonth());
        SignedIn who = cast.trainee(trainee.id());
        said(
                timeline,
                first,
                cast.member("ormandine"),
                who,
                TrainingKind.INDUCTION,
                "By the administrator: theatres, rules, how cases are logged and scored.");
        said(
                timeline,
                first.plusDays(BASELINE_DAY),
                cast.director(),
                who,
                TrainingKind.BASELINE,
                "Ready to begin with parts of a case; hands are steady, planning is still learnt.");
        said(
                timeline,
                first.plusDays(GOAL_DAY),
                who,
                who,
                TrainingKind.GOAL,
                "An even flap without help, and sutures tied to the pressure.");
        practice(cast, trainee, Exercise.FLAP, first.plusDays(PRACTICE_DAY), timeline);
        practice(cast, trainee, Exercise.SUTURE, first.plusDays(PRACTICE_DAY + ANSWERED_AFTER), timeline);
    }

    private void said(
            Timeline timeline, LocalDate day, SignedIn writer, SignedIn trainee, TrainingKind kind, String text) {
        TrainingDraft draft = new TrainingDraft(kind.name(), "", day.toString(), text);
        timeline.at(
                at(day), () -> records.write(writer, trainee.personId(), draft).orThrow());
    }

    /** Entered by the trainee, confirmed the day after by a supervisor of the first site. */
    private void practice(Cast cast, DemoCast.Trainee trainee, Exercise exercise, LocalDate day, Timeline timeline) {
        SignedIn who = cast.trainee(trainee.id());
        TrainingDraft draft = new TrainingDraft(
                TrainingKind.WET_LAB.name(), exercise.name(), day.toString(), "Four times on a model eye.");
        timeline.at(at(day), () -> {
            TrainingEntry entry = records.write(who, who.personId(), draft).orThrow();
            if (!trainee.id().equals(WAITS) || exercise != Exercise.SUTURE) {
                timeline.at(
                        at(day.plusDays(ANSWERED_AFTER)),
                        () -> records.answer(supervisor(cast, trainee), who.personId(), entry.id(), true, "")
                                .orThrow());
            }
        });
    }

    private static SignedIn supervisor(Cast cast, DemoCast.Trainee trainee) {
        List<String> there = DemoCast.SUPERVISORS.stream()
                .filter(one -> one.site().equals(trainee.postings().get(0).site()))
                .map(DemoCast.Supervisor::id)
                .toList();
        return cast.supervisor(there.get(0));
    }

    private static Instant at(LocalDate day) {
        return day.atStartOfDay(DemoCast.ZONE).plus(WORKING_HOURS).toInstant();
    }
}
