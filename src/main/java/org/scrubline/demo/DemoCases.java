package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Part;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.demo.DemoCast.Supervisor;
import org.scrubline.demo.DemoCast.Trainee;
import org.scrubline.demo.DemoPeople.Cast;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.TakeoverReason;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Writes the cases: about sixty signed over nine months, and a few that still wait for a score. */
@Component
@Profile("demo")
class DemoCases {

    private static final String PROCEDURE = "TRAB_FORNIX";
    private static final Duration SPAN = Duration.ofDays(270);
    private static final List<List<String>> FACTORS = List.of(
            List.of(), List.of(), List.of("ANTICOAGULANT"), List.of("WITH_CATARACT"), List.of("SCARRED", "YOUNG"));

    private final Cases cases;
    private final Sheets sheets;
    private final Signing signing;
    private final DemoCountersigns countersigns;
    private final RubricLibrary library;
    private final ScrublineClock clock;
    private final Random random = new Random(20260901);
    private final DemoScores scores = new DemoScores(random);

    DemoCases(
            Cases cases,
            Sheets sheets,
            Signing signing,
            DemoCountersigns countersigns,
            RubricLibrary library,
            ScrublineClock clock) {
        this.countersigns = countersigns;
        this.cases = cases;
        this.sheets = sheets;
        this.signing = signing;
        this.library = library;
        this.clock = clock;
    }

    /** One planned entry of the history. */
    private record Planned(Trainee trainee, int number, Instant endedAt, Supervisor scorer, boolean signed) {}

    /** Works in the tenant scope of the demo organisation. */
    void write(Cast cast) {
        countersigns.acceptStatements(cast);
        for (Planned planned : plan(clock.instant())) {
            Instant logged = planned.endedAt().plus(Duration.ofMinutes(25));
            SurgicalCase logEntry = clock.at(logged, () -> log(cast, planned));
            if (planned.signed()) {
                Instant signed = planned.endedAt().plus(delay(planned));
                SignedSheet record = clock.at(signed, () -> score(cast, planned, logEntry));
                countersigns.write(cast, planned.scorer(), record);
            }
        }
    }

    /** Signed cases spread over the months, oldest first, then a few that nobody has scored yet. */
    private List<Planned> plan(Instant now) {
        List<Planned> plan = new ArrayList<>();
        ZoneId zone = ZoneId.of(DemoCast.ZONE);
        for (Trainee trainee : DemoCast.TRAINEES) {
            for (int n = 0; n < trainee.cases(); n++) {
                double share = (n + random.nextDouble()) / trainee.cases();
                Instant day = now.minus(SPAN).plusSeconds((long) (share * (SPAN.toSeconds() - 20 * 86_400)));
                plan.add(new Planned(trainee, n, inTheatre(day, zone), scorer(), true));
            }
        }
        plan.sort(Comparator.comparing(Planned::endedAt));
        for (Trainee trainee : DemoCast.TRAINEES.subList(0, 3)) {
            Instant ended = inTheatre(now.minus(Duration.ofDays(1 + DemoCast.TRAINEES.indexOf(trainee))), zone);
            plan.add(new Planned(trainee, trainee.cases(), ended, DemoCast.SUPERVISORS.get(0), false));
        }
        Trainee unscored = DemoCast.TRAINEES.get(4);
        for (int n = 0; n < 4; n++) {
            Instant ended = inTheatre(now.minus(Duration.ofDays(6 + 9L * n)), zone);
            plan.add(new Planned(unscored, 3 + n, ended, DemoCast.SUPERVISORS.get(2), false));
        }
        return plan;
    }

    private Instant inTheatre(Instant day, ZoneId zone) {
        LocalTime time = LocalTime.of(9 + random.nextInt(8), 5 * random.nextInt(12));
        return ZonedDateTime.of(day.atZone(zone).toLocalDate(), time, zone).toInstant();
    }

    private Supervisor scorer() {
        return DemoCast.SUPERVISORS.get(random.nextInt(DemoCast.SUPERVISORS.size()));
    }

    private Duration delay(Planned planned) {
        double hours = planned.scorer().hours() * Math.exp(random.nextGaussian() * .45);
        return Duration.ofMinutes(Math.round(Math.min(hours, 320) * 60) + 30);
    }

    private SurgicalCase log(Cast cast, Planned planned) {
        List<String> factors = FACTORS.get(random.nextInt(planned.number() < 6 ? 3 : FACTORS.size()));
        CaseEntry entry = new CaseEntry(
                cast.programme().id(),
                cast.member(planned.trainee().username()).personId(),
                cast.member(planned.scorer().username()).personId(),
                cast.site(planned.scorer().site()).id(),
                reference(),
                PROCEDURE,
                random.nextBoolean() ? Eye.RIGHT : Eye.LEFT,
                Part.WHOLE_CASE,
                Supervision.SCRUBBED,
                factors,
                planned.endedAt(),
                ZoneId.of(DemoCast.ZONE),
                null,
                null);
        return cases.log(cast.member(planned.trainee().username()), entry).orThrow();
    }

    private int references;

    /** Unique within the demo: A0-000, A0-001, and on. */
    private String reference() {
        int n = (references++ * 7_919 + 4_211) % 26_000;
        return "%c%d-%03d".formatted((char) ('A' + n / 1_000), n % 10, n % 1_000);
    }

    private SignedSheet score(Cast cast, Planned planned, SurgicalCase scored) {
        var scorer = cast.member(planned.scorer().username());
        var open = sheets.toScore(scorer.personId()).stream()
                .filter(line -> line.surgicalCase().id().equals(scored.id()))
                .findFirst()
                .orElseThrow();
        Sheet sheet = sheets.get(open.sheetId());
        Rubric rubric = library.rubric(PROCEDURE);
        Map<String, Integer> levels =
                scores.draw(rubric, planned.trainee(), planned.scorer(), planned.number(), scored.band());
        Sheet filled = sheets.change(scorer, sheet.id(), sheet.lockVersion(), fill(rubric, levels))
                .orThrow();
        return signing.signWithoutCredential(scorer, filled.id()).orThrow();
    }

    private SheetChange fill(Rubric rubric, Map<String, Integer> levels) {
        List<SheetChange> changes = new ArrayList<>();
        changes.add(new SheetChange.ConfirmRole(Part.WHOLE_CASE, Supervision.SCRUBBED));
        levels.forEach((code, level) -> changes.add(new SheetChange.SetStep(code, state(rubric.step(code), level))));
        if (levels.getOrDefault("TF03", 5) <= 2) {
            changes.add(new SheetChange.AddEvent("TEAR_REPAIRED", "TF03", null, "closed with one stitch"));
        }
        if (random.nextDouble() < .04) {
            changes.add(new SheetChange.AddEvent(
                    EventCatalogue.TAKEOVER, "TF12", TakeoverReason.SAFETY, "punch taken over"));
        }
        changes.add(feedback(rubric, levels));
        return new SheetChange.All(changes);
    }

    /** A step that is not critical is done by the supervisor by plan now and then. */
    private StepState state(Step step, int level) {
        return !step.critical() && random.nextDouble() < .06
                ? new StepState.BySupervisor(StepState.BySupervisor.Cause.PLAN)
                : new StepState.Scored(level);
    }

    private static SheetChange feedback(Rubric rubric, Map<String, Integer> levels) {
        Step best = rubric.step(levels.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey());
        Step weakest = rubric.step(levels.entrySet().stream()
                .min(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey());
        return new SheetChange.SetFeedback(
                best.name() + ": " + best.sentence(levels.getOrDefault(best.code(), 4)),
                weakest.name() + ": " + weakest.coaching().get(0));
    }
}
