package org.scrubline.cohort.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * Tables on groups of trainees.
 *
 * @param programme id of the one shown
 * @param programmes to choose from
 */
record EqualityPage(String programme, List<CohortPage.Option> programmes, List<Section> sections) {

    /**
     * One characteristic.
     *
     * @param hidden why nothing can be shown; null when something can
     */
    record Section(String title, @Nullable String hidden, List<Table> tables) {}

    /** One measure; {@code id} is unique on the page. */
    record Table(String id, String caption, TableView view) {}
}
