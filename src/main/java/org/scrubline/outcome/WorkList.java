package org.scrubline.outcome;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Programme;

/**
 * Visits somebody has to find out about, the longest due first, and how many windows are in which state.
 *
 * @param programmes all this person may choose from
 * @param whole the programme's cases, not the reader's own alone
 * @param cases ended ones that are judged by their outcome
 * @param noBaseline those of them without a baseline
 * @param lines of this page
 * @param matching lines on all pages
 * @param page from 1
 */
public record WorkList(
        Programme programme,
        List<Programme> programmes,
        boolean whole,
        int cases,
        int noBaseline,
        Map<FollowUp, Map<WindowState.State, Integer>> counts,
        List<Line> lines,
        int matching,
        int page) {

    /** Lines on a page. */
    public static final int PAGE = 50;

    /** What to list. */
    public enum Show {
        OPEN,
        DUE,
        OVERDUE,
        NO_BASELINE
    }

    /**
     * A visit to find out about, or a case without a baseline.
     *
     * @param window null for a baseline
     * @param until the last day inside the window, for a baseline the day of the operation
     */
    public record Line(FiltrationCase of, @Nullable FollowUp window, LocalDate due, LocalDate until, boolean overdue) {}

    public WorkList {
        programmes = List.copyOf(programmes);
        counts = Map.copyOf(counts);
        lines = List.copyOf(lines);
    }

    /** How many pages there are, one at least. */
    public int pages() {
        return Math.max(1, (matching + PAGE - 1) / PAGE);
    }
}
