package org.scrubline.committee.web;

import java.util.List;

/**
 * The letter to the trainee about a decision.
 *
 * @param evidenceUsed what evidence it rests on, in sentences
 * @param notes what stands beside some of the records, in sentences
 * @param change what would change it, in sentences
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
        List<String> change,
        String appeal,
        String signer,
        String signerRole,
        String signedAt,
        String meaning,
        String hash) {}
