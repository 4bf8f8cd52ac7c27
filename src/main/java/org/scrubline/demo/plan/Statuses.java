package org.scrubline.demo.plan;

import static java.util.Objects.requireNonNull;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Procedures;

/**
 * Says which cases were never scored, left as drafts, closed by time, made void, or scored twice. The reference scorer
 * leaves nothing undone.
 */
final class Statuses {

    /** A sheet nobody signed in this time needs a director's release. */
    static final Duration OPEN = Duration.ofDays(14);

    /** Most of this trainee's cases are never scored, and few fornix-based ones are. */
    private static final String UNSCORED = "T13";

    /** Scored by three supervisors at most, so nobody is asked beside them. */
    private static final String FEW_SCORERS = "T14";

    private static final int NEVER_OF_UNSCORED = 24;
    private static final int FORNIX_OF_UNSCORED = 8;
    private static final int DRAFTS_OF_UNSCORED = 2;
    private static final int NEVER_OF_OTHERS = 12;
    private static final int DRAFTS_OF_LEAVING = 2;
    private static final int DRAFTS = 18;
    private static final int CLOSED = 8;
    private static final int VOIDED = 10;
    private static final int TWICE = 45;
    private static final Duration NEWEST = Duration.ofDays(70);
    private static final Duration STILL_WRITING = Duration.ofHours(2);

    private final List<Asked> asked;
    private final Instant end;
    private final double scale;
    private final Draws draws;

    Statuses(List<Asked> asked, Instant end, double scale, Draws draws) {
        this.asked = new ArrayList<>(asked);
        this.end = end;
        this.scale = scale;
        this.draws = draws;
    }

    List<Asked> draw() {
        Predicate<Asked> unscored = one -> trainee(one).equals(UNSCORED);
        Predicate<Asked> others =
                one -> !trainee(one).equals(UNSCORED) && !one.scorer().equals(DemoCast.REFERENCE);
        set(CaseStatus.NEVER_SCORED, NEVER_OF_UNSCORED, fornixFirst(unscored));
        set(CaseStatus.DRAFT, DRAFTS_OF_UNSCORED, fornixFirst(unscored));
        int late = set(CaseStatus.DRAFT, DRAFTS, candidates(others.and(this::afterTheEnd)));
        int left = set(
                CaseStatus.DRAFT,
                DRAFTS_OF_LEAVING,
                newestFirst(one -> one.scorer().equals(DemoCast.LEAVING)));
        int drafts = count(DRAFTS) - count(DRAFTS_OF_UNSCORED) - late - left;
        setExactly(CaseStatus.DRAFT, drafts, candidates(others.and(this::recent)));
        set(CaseStatus.CLOSED, CLOSED, candidates(others.and(one -> one.delay().compareTo(OPEN) > 0)));
        set(CaseStatus.NEVER_SCORED, NEVER_OF_OTHERS, candidates(others.and(this::old)));
        set(CaseStatus.VOIDED, VOIDED, candidates(others.and(this::old)));
        askTwice();
        asked.replaceAll(one -> one.status() == CaseStatus.SIGNED ? inTime(one) : one);
        return asked;
    }

    private int count(int ofAll) {
        return (int) Math.round(ofAll * scale);
    }

    private static String trainee(Asked one) {
        return one.operation().slot().trainee();
    }

    private boolean afterTheEnd(Asked one) {
        return one.signedAt().isAfter(end.minus(STILL_WRITING));
    }

    private boolean recent(Asked one) {
        return one.operation().slot().endedAt().isAfter(end.minus(NEWEST));
    }

    private boolean old(Asked one) {
        return one.operation().slot().endedAt().isBefore(end.minus(NEWEST));
    }

    /** Shuffled; only what would be signed so far. */
    private List<Asked> candidates(Predicate<Asked> wanted) {
        return draws.shuffled(asked.stream()
                .filter(one -> one.status() == CaseStatus.SIGNED)
                .filter(wanted)
                .toList());
    }

    /** Those that would be more than a few of the main procedure, then other procedures, then the few. */
    private List<Asked> fornixFirst(Predicate<Asked> wanted) {
        List<Asked> candidates = candidates(wanted);
        List<Asked> fornix = candidates.stream()
                .filter(one -> one.operation().procedure().equals(Procedures.TRAB_FORNIX))
                .toList();
        List<Asked> few = fornix.subList(0, Math.min(fornix.size(), count(FORNIX_OF_UNSCORED)));
        candidates.removeAll(fornix);
        candidates.addAll(0, fornix.subList(few.size(), fornix.size()));
        candidates.addAll(few);
        return candidates;
    }

    private List<Asked> newestFirst(Predicate<Asked> wanted) {
        List<Asked> candidates = candidates(wanted);
        candidates.sort(
                Comparator.comparing((Asked one) -> one.operation().number()).reversed());
        return candidates;
    }

    private int set(CaseStatus status, int ofAll, List<Asked> candidates) {
        return setExactly(status, count(ofAll), candidates);
    }

    private int setExactly(CaseStatus status, int wanted, List<Asked> candidates) {
        int most = Math.max(0, Math.min(wanted, candidates.size()));
        candidates.subList(0, most).forEach(one -> asked.set(one.operation().number(), one.as(status)));
        return most;
    }

    /** Beside one of the first place's two quick supervisors the other is asked as well. */
    private void askTwice() {
        List<Asked> candidates = candidates(
                one -> !afterTheEnd(one) && !trainee(one).equals(FEW_SCORERS) && partner(one.scorer()) != null);
        candidates
                .subList(0, Math.min(count(TWICE), candidates.size()))
                .forEach(one -> asked.set(one.operation().number(), one.with(requireNonNull(partner(one.scorer())))));
    }

    private static @Nullable String partner(String scorer) {
        return switch (scorer) {
            case DemoCast.REFERENCE -> "S02";
            case "S02", "S06" -> DemoCast.REFERENCE;
            default -> null;
        };
    }

    /** What is signed is signed before the plan ends. */
    private Asked inTime(Asked one) {
        return one.within(Duration.between(one.operation().slot().endedAt(), end.minus(STILL_WRITING)));
    }
}
