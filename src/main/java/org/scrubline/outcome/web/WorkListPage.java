package org.scrubline.outcome.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * The list of visits to find out about.
 *
 * @param programme id of the one shown
 * @param whole the programme's cases, not the reader's own alone
 * @param none no case has an outcome to know yet
 * @param lines null when nothing matches
 * @param counts how many windows are in which state
 * @param previous address of the page before, or null
 * @param next address of the page after, or null
 */
record WorkListPage(
        String programme,
        List<Option> programmes,
        List<Option> shows,
        String show,
        List<Option> windows,
        String window,
        boolean whole,
        boolean none,
        String cases,
        @Nullable TableView lines,
        TableView counts,
        String place,
        @Nullable String previous,
        @Nullable String next) {}
