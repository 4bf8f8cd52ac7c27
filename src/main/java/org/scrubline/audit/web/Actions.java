package org.scrubline.audit.web;

import java.util.List;

/** The actions this version of the program has a sentence for, in the order they are offered. */
final class Actions {

    static final List<String> KNOWN = List.of(
            "case-logged",
            "case-started",
            "case-ended",
            "case-abandoned",
            "case-converted",
            "trainee-added",
            "scorer-asked",
            "sheet-handed-on",
            "sheet-signed",
            "remark-written",
            "draft-warned",
            "draft-removed",
            "seen-signed-sheet",
            "seen-progress",
            "seen-programme-list",
            "seen-records-file",
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
            "rubric-published",
            "organisation-opened",
            "passkey-added",
            "passkey-removed",
            "wrong-passwords",
            "signature-refused",
            "clock-behind",
            "logged-in");

    private Actions() {}
}
