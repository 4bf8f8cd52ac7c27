package org.scrubline.people;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One trainee's time in the programme, as the placements say. A training month begins on the day of the month on which the
 * first placement began.
 *
 * @param placements those that began, by first day; no two share a day
 */
public record TrainingTime(List<Placement> placements) {

    private static final double PERCENT = 100;

    /** Days without a placement between two others, both included. */
    public record Gap(LocalDate first, LocalDate last) {

        public long days() {
            return ChronoUnit.DAYS.between(first, last) + 1;
        }
    }

    public TrainingTime {
        placements = placements.stream()
                .filter(Placement::began)
                .sorted(Comparator.comparing(Placement::first))
                .toList();
    }

    /** The first day; empty without a placement. */
    public Optional<LocalDate> first() {
        return placements.stream().map(Placement::first).findFirst();
    }

    /** The placement of a day. */
    public Optional<Placement> on(LocalDate day) {
        return placements.stream().filter(one -> one.covers(day)).findFirst();
    }

    /** Training months that are over on that day; the days of a break count as training months too, at no share. */
    public int monthsOver(LocalDate today) {
        return first().map(begin -> (int) Math.max(0, ChronoUnit.MONTHS.between(begin, today)))
                .orElse(0);
    }

    /** The share of full time worked in a training month counted from 1, in 0..1; days without a placement are none. */
    public double share(int month) {
        return first().map(begin -> share(begin.plusMonths(month - 1L), begin.plusMonths(month)))
                .orElse(0.0);
    }

    private double share(LocalDate from, LocalDate before) {
        double worked = placements.stream()
                .mapToDouble(one -> days(one, from, before) * one.share() / PERCENT)
                .sum();
        return worked / ChronoUnit.DAYS.between(from, before);
    }

    private static long days(Placement one, LocalDate from, LocalDate before) {
        LocalDate begin = one.first().isAfter(from) ? one.first() : from;
        LocalDate after = one.last().plusDays(1);
        LocalDate end = after.isBefore(before) ? after : before;
        return Math.max(0, ChronoUnit.DAYS.between(begin, end));
    }

    /** Breaks between placements, oldest first. */
    public List<Gap> gaps() {
        List<Gap> gaps = new ArrayList<>();
        for (int i = 1; i < placements.size(); i++) {
            LocalDate free = placements.get(i - 1).last().plusDays(1);
            LocalDate next = placements.get(i).first();
            if (free.isBefore(next)) {
                gaps.add(new Gap(free, next.minusDays(1)));
            }
        }
        return gaps;
    }
}
