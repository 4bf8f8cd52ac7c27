package org.scrubline.committee.web;

import java.util.List;
import org.scrubline.platform.FormView;

/**
 * The form in which the chair writes a decision.
 *
 * @param voters who may vote, each with the three answers
 * @param others who does not vote, and why
 * @param quorum how many are there of how many needed
 * @param waits whether something is written already, which can be dropped
 */
record DecisionFormPage(
        String action,
        String evidence,
        String title,
        List<Option> families,
        List<Option> bands,
        List<String> chosenBands,
        List<Option> levels,
        List<String> chosenLevel,
        List<Voter> voters,
        List<String> others,
        String quorum,
        boolean waits,
        FormView form) {

    /** A member and the answer chosen, as a list of one or none. */
    record Voter(String field, String name, List<Option> options, List<String> chosen) {}
}
