package org.scrubline.demo.plan;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.scrubline.demo.plan.DemoCast.Posting;
import org.scrubline.demo.plan.DemoCast.Trainee;

/** Spreads the cases over the working days of the postings. */
final class Calendar {

    private static final ZoneId ZONE = DemoCast.ZONE;
    private static final Duration NEAR = Duration.ofDays(21);
    private static final LocalTime LATE_EVENING = LocalTime.of(22, 40);
    private static final LocalTime EARLY_MORNING = LocalTime.of(4, 10);
    private static final int CASES = 900;

    private final LocalDate begin;
    private final double scale;
    private final Draws draws;

    Calendar(LocalDate begin, double scale, Draws draws) {
        this.begin = begin;
        this.scale = scale;
        this.draws = draws;
    }

    /** First day of a month of the plan, which need not be the first of a calendar month. */
    static LocalDate month(LocalDate begin, int month) {
        return begin.plusMonths(month - 1L);
    }

    /** Every slot, oldest first. */
    List<Slot> draw() {
        List<Integer> cases = DemoCast.TRAINEES.stream()
                .flatMap(trainee -> trainee.postings().stream())
                .map(Posting::cases)
                .toList();
        List<Integer> scaled = Apportioned.of(cases, (int) Math.round(CASES * scale));
        List<Slot> slots = new ArrayList<>();
        int next = 0;
        for (Trainee trainee : DemoCast.TRAINEES) {
            for (Posting posting : trainee.postings()) {
                slots.addAll(posting(trainee.id(), posting, scaled.get(next++)));
            }
        }
        slots.sort(Comparator.comparing(Slot::endedAt).thenComparing(Slot::trainee));
        changesOfClock().forEach(change -> doubleShift(slots, change));
        slots.sort(Comparator.comparing(Slot::endedAt).thenComparing(Slot::trainee));
        return slots;
    }

    private List<Slot> posting(String trainee, Posting posting, int cases) {
        LocalDate from = month(begin, posting.firstMonth());
        LocalDate to = month(begin, posting.lastMonth() + 1).minusDays(1);
        long days = ChronoUnit.DAYS.between(from, to);
        List<Slot> slots = new ArrayList<>();
        for (int n = 0; n < cases; n++) {
            LocalDate day = workingDay(from.plusDays((long) ((n + draws.uniform()) / cases * days)), to);
            LocalTime time = LocalTime.of(9 + draws.below(8), 5 * draws.below(12));
            slots.add(new Slot(
                    trainee,
                    posting.site(),
                    monthOf(day),
                    ZonedDateTime.of(day, time, ZONE).toInstant()));
        }
        return slots;
    }

    private static LocalDate workingDay(LocalDate day, LocalDate last) {
        LocalDate moved = day;
        while (moved.getDayOfWeek().getValue() > DayOfWeek.FRIDAY.getValue()) {
            moved = moved.plusDays(1);
        }
        return moved.isBefore(last) ? moved : workingDay(day.minusDays(2), last);
    }

    private int monthOf(LocalDate day) {
        int month = 1;
        while (month < DemoCast.MONTHS && !month(begin, month + 1).isAfter(day)) {
            month++;
        }
        return month;
    }

    private List<Instant> changesOfClock() {
        List<Instant> changes = new ArrayList<>();
        Instant end = month(begin, DemoCast.MONTHS + 1).atStartOfDay(ZONE).toInstant();
        Instant at = begin.atStartOfDay(ZONE).toInstant();
        ZoneOffsetTransition next = ZONE.getRules().nextTransition(at);
        while (next != null && next.getInstant().isBefore(end)) {
            changes.add(next.getInstant());
            next = ZONE.getRules().nextTransition(next.getInstant());
        }
        return changes;
    }

    /** Two cases of one trainee at one place become an evening and the small hours after the clocks changed. */
    private static void doubleShift(List<Slot> slots, Instant change) {
        for (int i = 0; i < slots.size(); i++) {
            for (int j = i + 1; j < slots.size(); j++) {
                if (pair(slots.get(i), slots.get(j)) && near(slots.get(i), change) && near(slots.get(j), change)) {
                    LocalDate sunday = change.atZone(ZONE).toLocalDate();
                    slots.set(i, slots.get(i).at(local(sunday.minusDays(1).atTime(LATE_EVENING))));
                    slots.set(j, slots.get(j).at(local(sunday.atTime(EARLY_MORNING))));
                    return;
                }
            }
        }
    }

    private static boolean pair(Slot one, Slot other) {
        return one.trainee().equals(other.trainee()) && one.site().equals(other.site()) && one.month() == other.month();
    }

    private static boolean near(Slot slot, Instant change) {
        return Duration.between(slot.endedAt(), change).abs().compareTo(NEAR) < 0;
    }

    private static Instant local(LocalDateTime time) {
        return time.atZone(ZONE).toInstant();
    }
}
