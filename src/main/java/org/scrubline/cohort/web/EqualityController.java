package org.scrubline.cohort.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.Equality;
import org.scrubline.cohort.EqualityReport;
import org.scrubline.people.Programme;
import org.scrubline.platform.Audited;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Tables on groups of trainees, for analysts. */
@Controller
class EqualityController {

    private final Equality equality;
    private final EqualityPages pages;
    private final ApplicationEventPublisher events;

    EqualityController(Equality equality, EqualityPages pages, ApplicationEventPublisher events) {
        this.equality = equality;
        this.pages = pages;
        this.events = events;
    }

    @GetMapping("/cohort/equality")
    String groups(@AuthenticationPrincipal SignedIn who, @RequestParam @Nullable UUID programme, Model model) {
        EqualityReport report = equality.read(who, programme);
        Programme read = report.programme();
        Audited.Item list = new Audited.Item("programme-list", read.id(), null, read.name());
        events.publishEvent(new RecordSeen(who, null, read.id(), list, null));
        model.addAttribute("page", pages.page(report));
        return "cohort/equality";
    }
}
