package org.scrubline.demo.plan;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.scrubline.outcome.FollowUp;
import org.scrubline.outcome.OutcomeEntry.Absence;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.Content;
import org.scrubline.outcome.OutcomeEntry.LostReason;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.outcome.Pressure;
import org.scrubline.outcome.Visit;
import org.scrubline.rubric.ComplexityFactor;
import org.scrubline.rubric.RubricLibrary;

/**
 * Draws what the visits after an operation found, with the rates of the invented scenario; the same for all procedures whose
 * outcome is judged. Two trainees have more of what their weak steps lead to.
 */
public final class OutcomeDraw {

    private static final long STREAM = 8;
    private static final Map<FollowUp, Double> MISSING = new EnumMap<>(Map.of(
            FollowUp.D1, .01,
            FollowUp.W1, .04,
            FollowUp.M1, .07,
            FollowUp.M3, .10,
            FollowUp.M6, .16,
            FollowUp.M12, .24));
    private static final double LEAK = .13;
    private static final double LOW = .08;
    private static final double EFFUSION = .06;
    private static final double THEATRE = .04;
    private static final double WITHOUT_DROPS = .68;
    private static final double INSIDE = .84;
    private static final double PER_HEALING_POINT = .08;
    private static final int MOST_HEALING_POINTS = 3;
    private static final String LEAKING = "T11";
    private static final String LOW_PRESSURE = "T12";
    private static final double TWICE_AS_OFTEN = 24. / 13;
    private static final LocalTime CLINIC = LocalTime.of(17, 10);
    private static final List<FollowUp> FIRST = List.of(FollowUp.D1, FollowUp.W1, FollowUp.M1);

    private final long seed;
    private final Map<String, Integer> healing = new HashMap<>();

    public OutcomeDraw(long seed, RubricLibrary library) {
        this.seed = seed;
        for (ComplexityFactor factor : library.complexity().factors()) {
            healing.put(factor.code(), factor.healingPoints());
        }
    }

    /** Sittings in the order of time; some visits nobody asked about stay open. */
    public List<PlannedOutcome> draw(PlannedCase of) {
        return new Course(of, Draws.of(seed, STREAM, of.number())).sittings();
    }

    /** One eye. */
    private final class Course {

        private final Draws draws;
        private final LocalDate operated;
        private final double before;
        private final double luck;
        private final double healed;
        private final boolean leaks;
        private final boolean low;
        private final boolean effusion;
        private final boolean theatre;

        Course(PlannedCase of, Draws draws) {
            this.draws = draws;
            this.operated = LocalDate.ofInstant(of.endedAt(), DemoCast.ZONE);
            this.before = Math.min(45, Math.max(20, halves(26 + draws.normal(4.5))));
            this.luck = draws.uniform();
            int points = of.factors().stream()
                    .mapToInt(code -> healing.getOrDefault(code, 0))
                    .sum();
            this.healed = PER_HEALING_POINT * Math.min(MOST_HEALING_POINTS, points);
            this.leaks = draws.chance(LEAK * (of.trainee().equals(LEAKING) ? TWICE_AS_OFTEN : 1));
            this.low = draws.chance(LOW * (of.trainee().equals(LOW_PRESSURE) ? 2 : 1));
            this.effusion = draws.chance(EFFUSION);
            this.theatre = draws.chance(THEATRE);
        }

        List<PlannedOutcome> sittings() {
            List<PlannedOutcome> sittings = new ArrayList<>();
            List<Content> first = new ArrayList<>();
            first.add(new Baseline(
                    operated.minusDays(1 + draws.below(40)),
                    new Pressure(before, 2 + draws.below(3)),
                    4 + draws.below(8)));
            for (FollowUp window : FollowUp.values()) {
                Optional<Content> content = content(window);
                if (FIRST.contains(window)) {
                    content.ifPresent(first::add);
                    if (window == FollowUp.M1) {
                        sittings.add(new PlannedOutcome(at(window), first));
                    }
                } else if (content.isPresent()) {
                    sittings.add(new PlannedOutcome(at(window), List.of(content.get())));
                }
                if (content.filter(Course::ends).isPresent()) {
                    break;
                }
            }
            return sittings;
        }

        private static boolean ends(Content content) {
            return content instanceof NoVisit none && none.absence() == Absence.LOST;
        }

        /** When the letters of a window have come. */
        private Instant at(FollowUp window) {
            LocalDate day = window.until(operated).plusDays(1 + draws.below(12));
            return day.atTime(CLINIC).atZone(DemoCast.ZONE).toInstant();
        }

        /** Empty where nobody has found out yet. */
        private Optional<Content> content(FollowUp window) {
            double missing = MISSING.getOrDefault(window, 0.);
            if (!draws.chance(missing)) {
                return Optional.of(visit(window));
            }
            return switch (draws.weighted(50, 20, 15, 15)) {
                case 0 -> Optional.of(absent(window, Absence.MISSED));
                case 1 -> Optional.of(absent(window, Absence.ELSEWHERE));
                case 2 -> Optional.of(absent(window, window == FollowUp.M12 ? Absence.LOST : Absence.MISSED));
                default -> Optional.empty();
            };
        }

        private Content absent(FollowUp window, Absence absence) {
            LostReason why = absence == Absence.LOST ? draws.pick(List.of(LostReason.values())) : null;
            return new NoVisit(window, absence, window.until(operated), why);
        }

        private Visit visit(FollowUp window) {
            boolean early = window == FollowUp.D1 || window == FollowUp.W1;
            LocalDate due = window.due(operated);
            long spread = early ? 1 : 2L * draws.below(6) - 5;
            LocalDate day = window == FollowUp.D1 ? due : due.plusDays(spread);
            boolean wet = early && leaks;
            return new Visit(
                    day,
                    pressure(window),
                    early && low ? Visit.Chamber.SHALLOW : Visit.Chamber.DEEP,
                    early ? wet ? Visit.LeakTest.LEAKS : Visit.LeakTest.DRY : null,
                    draws.chance(.75) ? Visit.Bleb.SPREAD : Visit.Bleb.RAISED,
                    early ? effusion : null,
                    early ? null : draws.chance(.06) ? Visit.Vision.WORSE : Visit.Vision.SAME,
                    care(window),
                    window == FollowUp.M12 && luck > .97,
                    false,
                    draws.chance(.7) ? Visit.SeenBy.OTHER : Visit.SeenBy.OPERATOR);
        }

        private Set<Visit.Care> care(FollowUp window) {
            Set<Visit.Care> care = EnumSet.noneOf(Visit.Care.class);
            if (window == FollowUp.W1 && draws.chance(.30)) {
                care.add(draws.chance(.7) ? Visit.Care.SUTURE_RELEASE : Visit.Care.SUTURE_LYSIS);
            }
            if (window == FollowUp.M1 && draws.chance(.25)) {
                care.add(Visit.Care.FLUOROURACIL);
            }
            if (window == FollowUp.M1 && draws.chance(.15)) {
                care.add(Visit.Care.MASSAGE);
            }
            if (window == FollowUp.M3 && draws.chance(.15)) {
                care.add(Visit.Care.NEEDLING);
            }
            if (window == FollowUp.M3 && theatre) {
                care.add(Visit.Care.THEATRE);
            }
            return care;
        }

        /** At most 18 mmHg and a fifth below the baseline where it went well. */
        private Pressure pressure(FollowUp window) {
            if (window == FollowUp.D1 || window == FollowUp.W1) {
                boolean soft = window == FollowUp.W1 && low;
                return new Pressure(soft ? halves(3 + 2 * draws.uniform()) : between(7, 22, 12 + draws.normal(4)), 0);
            }
            double limit = Math.min(18, Math.floor(before * 2 * .78) / 2);
            if (luck < WITHOUT_DROPS - healed) {
                return new Pressure(between(7, limit, 12 + draws.normal(2)), 0);
            }
            if (luck < INSIDE - healed) {
                return new Pressure(between(8, limit, 14 + draws.normal(2)), 1 + draws.below(2));
            }
            return new Pressure(between(19, 35, 22 + draws.normal(2.5)), 2 + draws.below(2));
        }

        private static double between(double least, double most, double value) {
            return Math.max(least, Math.min(most, halves(value)));
        }

        private static double halves(double value) {
            return Math.round(value * 2) / 2.;
        }
    }
}
