package org.scrubline.casework.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * The reference cases of a programme.
 *
 * @param programme its id
 * @param nav the entry of the navigation the page belongs to
 * @param others the reader's other programmes; may be empty
 * @param waiting those the reader can score now
 * @param all every one; no rows for none
 * @param agreement where the agreement between supervisors is shown, for the reader's roles
 * @param form what a director chooses from; null for everyone else
 */
record ReferenceListPage(
        String programme,
        String nav,
        List<Line> others,
        List<Line> waiting,
        TableView all,
        List<Line> agreement,
        @Nullable Choices form) {

    /** A link with what it is about. */
    record Line(
            String href,
            String label,
            @Nullable String note,
            @Nullable String figure) {}

    /** What a new reference case can be of. */
    record Choices(List<Option> procedures, List<Option> bands) {}
}
