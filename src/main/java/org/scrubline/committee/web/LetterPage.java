package org.scrubline.committee.web;

import java.util.List;

/**
 * The letter to the trainee about a decision.
 *
 * @param evidenceUsed what evidence it rests on, in sentences
 * @param notes what stands beside some of the records, in sentences
 * @param change what would change it
 * @param appeal how and until when to appeal
 */
record LetterPage(
        String href,
        String decisionHref,
        String organisation,
        String programme,
        String date,
        DecisionView view,
        List<String> evidenceUsed,
        List<String> notes,
        List<Change> change,
        String appeal,
        String signer,
        String signerRole,
        String signedAt,
        String meaning,
        String hash) {

    /**
     * What would change the answer about one level.
     *
     * @param lead the level and why it is not reached
     * @param asks what is not met yet, in sentences
     */
    record Change(String lead, List<String> asks) {}
}
