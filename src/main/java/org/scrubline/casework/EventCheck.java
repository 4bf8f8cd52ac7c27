package org.scrubline.casework;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.EventKind;
import org.scrubline.rubric.Rubric;

/** Why an event cannot be recorded as described. */
class EventCheck {

    static final int ACTION_LENGTH = 500;
    /** More events than this on one sheet is a fault of the sender, not a case. */
    static final int EVENTS = 40;

    private final Rubric rubric;
    private final EventCatalogue catalogue;

    EventCheck(Rubric rubric, EventCatalogue catalogue) {
        this.rubric = rubric;
        this.catalogue = catalogue;
    }

    List<Refusal> refusals(SheetChange.AddEvent event, int recorded) {
        List<Refusal> reasons = new ArrayList<>();
        String code = event.eventCode();
        EventKind kind = catalogue.kinds().stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElse(null);
        String stepCode = event.stepCode();
        if (kind == null) {
            reasons.add(Refusal.at("event.code", "sheet.refusal.event", code));
        } else if (code.equals(EventCatalogue.TAKEOVER)) {
            takeover(event, reasons);
        } else {
            other(event, kind, reasons);
        }
        if (stepCode != null && rubric.find(stepCode).isEmpty()) {
            reasons.add(Refusal.at("event.step", "sheet.refusal.step", stepCode));
        }
        if (recorded >= EVENTS) {
            reasons.add(Refusal.at("event.code", "sheet.refusal.events", EVENTS));
        }
        FreeText.narrative("event.action", FreeText.tidy(event.actionTaken()), ACTION_LENGTH)
                .ifPresent(reasons::add);
        return reasons;
    }

    private static void takeover(SheetChange.AddEvent event, List<Refusal> reasons) {
        if (event.stepCode() == null) {
            reasons.add(Refusal.at("event.step", "sheet.refusal.takeover-step"));
        }
        if (event.reason() == null) {
            reasons.add(Refusal.at("event.reason", "sheet.refusal.takeover-reason"));
        }
    }

    private static void other(SheetChange.AddEvent event, EventKind kind, List<Refusal> reasons) {
        if (event.reason() != null) {
            reasons.add(Refusal.at("event.reason", "sheet.refusal.reason-without-takeover"));
        }
        if (kind.needsReason() && FreeText.tidy(event.actionTaken()).isEmpty()) {
            reasons.add(Refusal.at("event.action", "sheet.refusal.event-words", kind.name()));
        }
    }
}
