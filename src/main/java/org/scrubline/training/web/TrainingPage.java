package org.scrubline.training.web;

import java.util.List;
import org.scrubline.platform.TableView;

/**
 * A training record, ready to print.
 *
 * @param href its own path
 * @param missing what E0 and E1 ask for and is not there yet, in sentences
 * @param placements where the trainee works; may have no rows
 * @param gaps breaks between placements, in sentences
 * @param kinds what the reader may add; empty for none
 * @param waiting practice the reader may answer; empty for none
 * @param procedures for which the reader may declare earlier cases; empty for none
 */
record TrainingPage(
        String href,
        String name,
        String programme,
        List<String> missing,
        TableView entries,
        TableView placements,
        List<String> gaps,
        TableView earlier,
        List<Option> kinds,
        List<Option> exercises,
        List<Option> waiting,
        List<Option> procedures) {

    /** An entry of a choice. */
    record Option(String value, String label) {}
}
