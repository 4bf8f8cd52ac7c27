package org.scrubline.casework.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;
import org.scrubline.platform.TableView;

/**
 * One reference case.
 *
 * @param href its own path
 * @param listHref the list it stands in
 * @param nav the entry of the navigation the page belongs to
 * @param closed when nobody can score it any more, in a sentence; null while it is open
 * @param scored when the reader scored it, in a sentence; null when the reader did not
 * @param own the reader's own scores by step; no rows when there are none
 * @param phases the steps to score; empty when the reader cannot score it now
 * @param restChoices the one choice about untouched steps
 * @param rest what of it is chosen
 * @param closes whether the reader can close it now
 */
record ReferencePage(
        String href,
        String listHref,
        String nav,
        String title,
        List<Fact> facts,
        String film,
        @Nullable String closed,
        @Nullable String scored,
        TableView own,
        List<ScoredPhases.PhaseOfSteps> phases,
        List<Option> restChoices,
        List<String> rest,
        boolean closes,
        FormView form) {

    /** A plain fact; see the facts component. */
    record Fact(@Nullable String value, String text) {}
}
