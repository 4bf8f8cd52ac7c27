package org.scrubline.cohort.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * The page of early signals, every sentence ready to print.
 *
 * @param programmes what can be chosen
 * @param months cases of each trainee by month, newest month last
 */
record SignalPage(
        String programme,
        List<CohortPage.Option> programmes,
        List<CohortPage.Fact> facts,
        List<Line> signals,
        TableView months) {

    /**
     * Something worth a look.
     *
     * @param title whom it is about, and what
     * @param href the page with the numbers; null when there is none
     * @param change what would change this
     * @param alarms how often the rule speaks in vain; null for a count
     * @param sheets heading of the sheets it rests on
     * @param evidence these sheets; may be empty
     */
    record Line(
            String title,
            @Nullable String href,
            String why,
            String change,
            @Nullable String alarms,
            String sheets,
            List<Sheet> evidence) {}

    /** A signed sheet to open. */
    record Sheet(String href, String label) {}
}
