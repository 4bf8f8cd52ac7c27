package org.scrubline.cohort.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * The director's page, every sentence and number ready to print.
 *
 * @param show which trainees the tables show
 * @param empty whether no signed sheet of the procedure counts yet
 * @param columns names of the steps
 * @param grid a row a trainee
 * @param trainees exposure and scorers of each trainee
 * @param timely scores in time, a line each
 * @param asked the denominator of those lines in words
 */
record CohortPage(
        String programme,
        String programmeName,
        String procedure,
        String title,
        List<Option> programmes,
        List<Option> procedures,
        String show,
        List<Option> shows,
        List<Fact> facts,
        boolean empty,
        List<String> columns,
        List<GridRow> grid,
        List<String> scale,
        List<Look> worthALook,
        TableView trainees,
        List<Fact> timely,
        String asked) {

    /** An entry of a choice. */
    record Option(String value, String label) {}

    /** A number and what it counts; {@code value} may be null when the text says it all. */
    record Fact(@Nullable String value, String text) {}

    /** A trainee in the grid. */
    record GridRow(String name, String href, List<GridCell> cells) {}

    /**
     * A cell of the grid.
     *
     * @param shown share and number of scores, the word for too few to conclude, or a dash when never scored
     * @param look tint-1 to tint-5, darker is higher; few; none
     * @param href the sheets behind it; null when there is none
     * @param label the cell in words
     */
    record GridCell(String shown, String look, @Nullable String href, String label) {}

    /** Something worth a look: what, why, and what would change this. */
    record Look(String href, String title, String why, String change) {}
}
