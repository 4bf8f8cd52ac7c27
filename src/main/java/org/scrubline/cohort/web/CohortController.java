package org.scrubline.cohort.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.Cohort;
import org.scrubline.cohort.CohortReport;
import org.scrubline.people.Programme;
import org.scrubline.platform.Audited;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The director's page. */
@Controller
class CohortController {

    private final Cohort cohort;
    private final CohortPages pages;
    private final ApplicationEventPublisher events;

    CohortController(Cohort cohort, CohortPages pages, ApplicationEventPublisher events) {
        this.cohort = cohort;
        this.pages = pages;
        this.events = events;
    }

    @GetMapping("/cohort")
    String cohort(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam @Nullable UUID programme,
            @RequestParam @Nullable String procedure,
            @RequestParam(defaultValue = "") String show,
            Model model) {
        CohortReport report = cohort.report(who, programme, procedure);
        events.publishEvent(seen(who, report.programme()));
        model.addAttribute("page", pages.page(report, cohort.programmes(who), cohort.procedures(), RowFilter.of(show)));
        model.addAttribute("directs", who.has(Role.DIRECTOR, report.programme().id()));
        return "cohort/cohort";
    }

    /** A list shows everyone's counts side by side: it is one reading, about nobody in particular. */
    private static RecordSeen seen(SignedIn who, Programme programme) {
        Audited.Item list = new Audited.Item("programme-list", programme.id(), null, programme.name());
        return new RecordSeen(who, null, programme.id(), list, null);
    }
}
