package org.scrubline.committee.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Wording.FormError;

/**
 * A decision as it would be signed.
 *
 * @param ask what to ask the chair's passkeys; null when there is none
 * @param accepted whether the chair accepted what a signature means
 */
record DecisionReviewPage(
        String action,
        DecisionView view,
        List<String> obstacles,
        String signer,
        String roleKey,
        String meaning,
        String hash,
        boolean accepted,
        Passkeys.@Nullable Ask ask,
        List<FormError> errors,
        @Nullable String passwordError) {}
