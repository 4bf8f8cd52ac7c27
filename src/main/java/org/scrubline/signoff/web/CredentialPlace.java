package org.scrubline.signoff.web;

import java.util.List;
import org.scrubline.platform.Refusal;

/** Where on a page to mend a refused credential: without a passkey the password is what is left. */
final class CredentialPlace {

    private CredentialPlace() {}

    static List<Refusal> of(List<Refusal> reasons) {
        return reasons.stream()
                .map(reason -> reason.field().equals("passkey")
                        ? Refusal.at(
                                "password",
                                reason.messageKey(),
                                reason.arguments().toArray())
                        : reason)
                .toList();
    }
}
