package org.scrubline.audit.web;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The actions this version of the program has a sentence for, in the order they are offered. */
final class Actions {

    static final List<String> KNOWN = List.of(
            "case-logged",
            "case-put-away",
            "case-started",
            "case-ended",
            "case-abandoned",
            "case-converted",
            "trainee-added",
            "scorer-asked",
            "sheet-handed-on",
            "draft-handed-over",
            "sheet-signed",
            "remark-written",
            "draft-warned",
            "draft-removed",
            "outcome-entered",
            "seen-outcome",
            "seen-signed-sheet",
            "seen-progress",
            "seen-programme-list",
            "seen-records-file",
            "archive-taken",
            "meeting-planned",
            "meeting-changed",
            "meeting-open",
            "meeting-closed",
            "meeting-cancelled",
            "pack-frozen",
            "decision-signed",
            "letter-sent",
            "decision-appealed",
            "panel-named",
            "appeal-decided",
            "appeal-ended",
            "entitlement-suspended",
            "entitlement-reinstated",
            "seen-evidence-pack",
            "seen-committee-decision",
            "visitor-let-in",
            "visitor-shown-out",
            "hold-set",
            "hold-ended",
            "retention-changed",
            "removal-asked",
            "records-removed",
            "person-added",
            "role-given",
            "role-ended",
            "factor-clearing-asked",
            "factor-cleared",
            "factor-clearing-dropped",
            "person-provisioned",
            "person-closed",
            "person-reopened",
            "provision-token-made",
            "provision-token-revoked",
            "rubric-published",
            "setting-changed",
            "site-added",
            "site-renamed",
            "site-closed",
            "site-opened",
            "placement-recorded",
            "placement-ended",
            "exposure-planned",
            "training-written",
            "training-answered",
            "seen-training-record",
            "organisation-opened",
            "passkey-added",
            "passkey-removed",
            "code-app-added",
            "code-app-removed",
            "recovery-codes-made",
            "recovery-code-used",
            "wrong-codes",
            "password-changed",
            "password-code-sent",
            "password-renewed",
            "address-confirmed",
            "address-removed",
            "provider-linked",
            "provider-unlinked",
            "new-device",
            "wrong-passwords",
            "signature-refused",
            "clock-behind",
            "logged-in");

    /** Stands for all of {@link #WATCHED}. */
    static final String SECURITY = "security";

    /** What whoever looks after the accounts should know of. */
    static final Set<String> WATCHED = Set.of(
            "wrong-passwords",
            "wrong-codes",
            "new-device",
            "signature-refused",
            "passkey-added",
            "passkey-removed",
            "code-app-added",
            "code-app-removed",
            "recovery-codes-made",
            "recovery-code-used",
            "password-changed",
            "password-code-sent",
            "password-renewed",
            "address-confirmed",
            "address-removed",
            "provider-linked",
            "provider-unlinked",
            "person-added",
            "role-given",
            "role-ended",
            "factor-clearing-asked",
            "factor-cleared",
            "factor-clearing-dropped",
            "person-provisioned",
            "person-closed",
            "person-reopened",
            "provision-token-made",
            "provision-token-revoked",
            "setting-changed",
            "retention-changed",
            "visitor-let-in",
            "clock-behind");

    private Actions() {}

    /** The actions a choice stands for; none for no choice. */
    static Set<String> named(@Nullable String choice) {
        if (choice == null) {
            return Set.of();
        }
        return choice.equals(SECURITY) ? WATCHED : Set.of(choice);
    }
}
