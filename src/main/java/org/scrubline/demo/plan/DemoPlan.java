package org.scrubline.demo.plan;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.scrubline.rubric.Procedures;

/**
 * Everything that happens in the demo programme over 24 months.
 *
 * @param begin first day of the first month
 * @param end the instant the plan ends; nothing in it is later
 * @param cases oldest first; {@code cases.get(n).number()} is n
 */
public record DemoPlan(long seed, LocalDate begin, Instant end, double scale, List<PlannedCase> cases) {

    /** The seed of the programme the documents speak of. */
    public static final long USUAL_SEED = 20_260_901;

    private static final int TWO_DEVICES = 3;
    private static final int REFERENCES_TAKEN = 2;
    private static final int ALL_BY_SUPERVISOR = 1;
    private static final int UNEVEN_COUNTS = 2;
    private static final int LATE_BLEEDINGS = 2;

    /** One stream of chance for each part of the plan. */
    private enum Part {
        CALENDAR(-1),
        OPERATIONS(-2),
        SCORERS(-3),
        STATUSES(-4),
        ODDITIES(-5),
        CONTESTS(-6);

        private final long key;

        Part(long key) {
            this.key = key;
        }

        Draws draws(long seed) {
            return Draws.of(seed, key);
        }
    }

    public DemoPlan {
        cases = List.copyOf(cases);
    }

    /**
     * Draws the plan.
     *
     * @param seed the same seed, first day and scale give the same plan
     * @param begin first day of month 1
     * @param scale 1 gives 900 cases; more than 0, at most 10
     * @throws IllegalArgumentException for another scale
     */
    public static DemoPlan draw(long seed, LocalDate begin, double scale, DemoRubrics rubrics) {
        if (!(scale > 0 && scale <= 10)) {
            throw new IllegalArgumentException("the scale must be more than 0 and at most 10, but is " + scale);
        }
        Instant end = Calendar.month(begin, DemoCast.MONTHS + 1)
                .atStartOfDay(DemoCast.ZONE)
                .toInstant();
        List<Slot> slots = new Calendar(begin, scale, Part.CALENDAR.draws(seed)).draw();
        List<Operation> operations = new Operations(slots, Part.OPERATIONS.draws(seed)).draw();
        List<Asked> asked = new Scorers(scale, Part.SCORERS.draws(seed)).draw(operations);
        List<Asked> settled = new Statuses(asked, end, scale, Part.STATUSES.draws(seed)).draw();
        Oddities odd = new Oddities(settled, scale, Part.ODDITIES.draws(seed));
        CaseDraw draw = new CaseDraw(seed, rubrics, oddities(odd), rareEvents(odd), end);
        List<PlannedCase> cases = settled.stream().map(draw::draw).toList();
        return new DemoPlan(
                seed, begin, end, scale, new ContestDraw(cases, end, scale, Part.CONTESTS.draws(seed)).draw());
    }

    private static Map<Integer, Set<Oddity>> oddities(Oddities odd) {
        Map<Integer, Set<Oddity>> oddities = new HashMap<>();
        odd.choose(ALL_BY_SUPERVISOR, one -> one.second() == null)
                .forEach(number -> oddities.put(number, Set.of(Oddity.ALL_BY_SUPERVISOR)));
        odd.choose(TWO_DEVICES, one -> true).forEach(number -> oddities.put(number, Set.of(Oddity.TWO_DEVICES)));
        odd.choose(REFERENCES_TAKEN, one -> one.operation().number() > 0)
                .forEach(number -> oddities.put(number, Set.of(Oddity.REFERENCE_TAKEN)));
        return oddities;
    }

    private static Map<Integer, PlannedEvent> rareEvents(Oddities odd) {
        Map<Integer, PlannedEvent> rare = new HashMap<>();
        odd.choose(UNEVEN_COUNTS, procedure(Procedures.TRAB_FORNIX))
                .forEach(number -> rare.put(number, Events.unevenCount()));
        odd.choose(LATE_BLEEDINGS, procedure(Procedures.POSTOP_CARE))
                .forEach(number -> rare.put(number, Events.lateBleeding()));
        return rare;
    }

    private static Predicate<Asked> procedure(String procedure) {
        return one -> one.operation().procedure().equals(procedure);
    }

    /** First day of a month of the plan. */
    public LocalDate month(int month) {
        return Calendar.month(begin, month);
    }
}
