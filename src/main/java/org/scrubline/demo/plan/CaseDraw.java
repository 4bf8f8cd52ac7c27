package org.scrubline.demo.plan;

import static java.util.Objects.requireNonNull;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.scrubline.casework.Part;
import org.scrubline.casework.Supervision;
import org.scrubline.demo.plan.DemoCast.Supervisor;
import org.scrubline.demo.plan.DemoCast.Trainee;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/** Draws the content of one case after the other, each trainee learning from case to case. */
final class CaseDraw {

    private static final long STREAM = 7;

    /** Steps of an episode of after-care, with how often each belongs to it. */
    private static final Map<String, Double> OPTIONAL =
            Map.of("PC03", .6, "PC04", .35, "PC05", .4, "PC06", .3, "PC07", .3);

    private static final double PLANNED_FOR_SUPERVISOR = .05;
    private static final double ABLE = 3.7;
    private static final double BESIDE = .5;
    private static final double SELF_SCORED = .6;
    private static final double SECOND_SD = .5;
    private static final Duration SECOND_AT_MOST = Duration.ofDays(10);
    private static final Duration SECOND_AFTER = Duration.ofMinutes(45);

    private final long seed;
    private final DemoRubrics rubrics;
    private final Levels levels;
    private final Map<String, Skill> skills = Skill.all(DemoCast.TRAINEES);
    private final Map<Integer, Set<Oddity>> oddities;
    private final Map<Integer, PlannedEvent> rare;
    private final Instant end;

    CaseDraw(
            long seed,
            DemoRubrics rubrics,
            Map<Integer, Set<Oddity>> oddities,
            Map<Integer, PlannedEvent> rare,
            Instant end) {
        this.seed = seed;
        this.rubrics = rubrics;
        this.levels = new Levels(seed);
        this.oddities = oddities;
        this.rare = rare;
        this.end = end;
    }

    /** Must be asked in the order of time. */
    PlannedCase draw(Asked asked) {
        Operation operation = asked.operation();
        Slot slot = operation.slot();
        Draws draws = Draws.of(seed, STREAM, operation.number());
        Rubric rubric = rubrics.of(operation.procedure(), slot.month());
        Set<Oddity> odd = oddities.getOrDefault(operation.number(), Set.of());
        boolean supervisorAlone = odd.contains(Oddity.ALL_BY_SUPERVISOR);
        SheetDraw.Happened happened = supervisorAlone ? nothing(rubric, slot) : happened(rubric, operation, draws);
        Supervision supervision =
                happened.shown() > ABLE && draws.chance(BESIDE) ? Supervision.IN_ROOM : Supervision.SCRUBBED;
        List<PlannedSheet> sheets = sheets(asked, happened, draws);
        boolean self = !supervisorAlone && asked.status() != CaseStatus.NEVER_SCORED && draws.chance(SELF_SCORED);
        return new PlannedCase(
                operation.number(),
                reference(operation.number()),
                slot.trainee(),
                slot.site(),
                operation.procedure(),
                rubric.version(),
                operation.band(),
                operation.factors(),
                operation.eye(),
                slot.endedAt(),
                supervisorAlone ? Part.ASSISTED : Part.WHOLE_CASE,
                supervision,
                asked.status(),
                sheets,
                self ? levels.self(rubric, happened.trainee(), happened.shown(), draws) : Map.of(),
                odd,
                null);
    }

    private static SheetDraw.Happened nothing(Rubric rubric, Slot slot) {
        Set<String> all = rubric.steps().stream().map(Step::code).collect(Collectors.toSet());
        return new SheetDraw.Happened(rubric, DemoCast.trainee(slot.trainee()), 0, List.of(), all, Set.of());
    }

    private SheetDraw.Happened happened(Rubric rubric, Operation operation, Draws draws) {
        Slot slot = operation.slot();
        Trainee trainee = DemoCast.trainee(slot.trainee());
        double skill = requireNonNull(skills.get(trainee.id())).next(rubric.family(), slot.month());
        double shown = skill - Levels.cost(operation.band()) + draws.normal(Levels.CASE_SD);
        Set<String> notPart = chosen(
                rubric,
                step -> OPTIONAL.getOrDefault(step.code(), 1.) < 1
                        && !draws.chance(OPTIONAL.getOrDefault(step.code(), 1.)));
        Set<String> bySupervisor = chosen(rubric, step -> !step.critical() && draws.chance(PLANNED_FOR_SUPERVISOR));
        List<PlannedEvent> events = new ArrayList<>(Events.draw(trainee.id(), rubric, shown, draws));
        PlannedEvent special = rare.get(operation.number());
        if (special != null) {
            events.removeIf(event -> event.step().equals(special.step()));
            events.add(special);
        }
        notPart.removeIf(code -> events.stream().anyMatch(event -> event.step().equals(code)));
        return new SheetDraw.Happened(rubric, trainee, shown, events, bySupervisor, notPart);
    }

    private static Set<String> chosen(Rubric rubric, Predicate<Step> wanted) {
        return rubric.steps().stream().filter(wanted).map(Step::code).collect(Collectors.toCollection(HashSet::new));
    }

    private List<PlannedSheet> sheets(Asked asked, SheetDraw.Happened happened, Draws draws) {
        SheetDraw draw = new SheetDraw(levels, happened, draws);
        PlannedSheet first = draw.whole(asked, DemoCast.supervisor(asked.scorer()), asked.delay());
        String second = asked.second();
        if (second != null) {
            Supervisor other = DemoCast.supervisor(second);
            return List.of(first, draw.whole(asked, other, secondDelay(asked, other, draws)));
        }
        return switch (asked.status()) {
            case SIGNED, VOIDED -> List.of(first);
            case DRAFT, CLOSED -> List.of(draw.begun(first));
            case NEVER_SCORED -> List.of(SheetDraw.untouched(first));
        };
    }

    private Duration secondDelay(Asked asked, Supervisor scorer, Draws draws) {
        double hours = scorer.hours() * StrictMath.exp(draws.normal(SECOND_SD));
        Duration delay = Duration.ofMinutes(Math.round(hours * 60)).plus(SECOND_AFTER);
        Duration left = Duration.between(asked.operation().slot().endedAt(), end.minus(SECOND_AFTER));
        Duration most = left.compareTo(SECOND_AT_MOST) < 0 ? left : SECOND_AT_MOST;
        return delay.compareTo(most) < 0 ? delay : most;
    }

    /** A letter, a digit and three digits, another for each of the first 26 000 numbers. */
    private static String reference(int number) {
        int n = (number * 7_919 + 4_211) % 26_000;
        return "%c%d-%03d".formatted((char) ('A' + n / 1_000), n % 10, n % 1_000);
    }
}
