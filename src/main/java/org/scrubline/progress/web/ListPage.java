package org.scrubline.progress.web;

import java.util.List;

/**
 * The list of the next day.
 *
 * @param days days with their cases, soonest first
 * @param later cases of other days, a line each, and those without a day
 */
record ListPage(List<Day> days, List<Line> later) {

    /** Nothing is planned. */
    public boolean isEmpty() {
        return days.isEmpty() && later.isEmpty();
    }

    /** A day in words. */
    record Day(String name, List<Listed> cases) {}

    /** A case of another day. */
    record Line(String href, String label, String note) {}

    /**
     * A case of a day.
     *
     * @param may what this trainee may do
     * @param past cases so far and the time since the last
     * @param goal what the trainee wants to work on; empty when nothing was said
     * @param few which steps say nothing yet; empty when every one does
     */
    record Listed(
            String href,
            String title,
            String note,
            List<String> factors,
            String may,
            List<String> past,
            String goal,
            List<Step> focus,
            String few) {}

    /** A step to work on. */
    record Step(String name, String counts, List<String> coaching) {}
}
