package org.scrubline.audit.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;
import org.scrubline.platform.TableView;

/**
 * What was done in a programme.
 *
 * @param narrowed whether a filter is set
 * @param table the entries; null when there is none to show
 * @param file address of the same entries as a file
 * @param refused refused log-ins; null when there was none
 * @param guessed whether one name was refused so often that somebody may be guessing
 */
record DonePage(
        String programme,
        FormView form,
        List<Option> people,
        List<Option> actions,
        boolean narrowed,
        @Nullable TableView table,
        Pager pager,
        String file,
        @Nullable TableView refused,
        boolean guessed) {

    /** One entry of a select field. */
    record Option(String value, String label) {}
}
