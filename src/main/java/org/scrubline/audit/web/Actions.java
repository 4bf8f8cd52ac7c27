package org.scrubline.audit.web;

import java.util.List;

/** The actions this version of the program has a sentence for, in the order they are offered. */
final class Actions {

    static final List<String> KNOWN = List.of(
            "case-logged",
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
            "person-added",
            "role-given",
            "rubric-published",
            "organisation-opened",
            "logged-in");

    private Actions() {}
}
