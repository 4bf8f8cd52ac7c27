package org.scrubline.cohort.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.ReferenceAgreement;
import org.scrubline.cohort.ReferenceReport;
import org.scrubline.platform.Audited;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** How alike reference cases were scored, for directors and for each supervisor. */
@Controller
class ReferenceScoresController {

    private final ReferenceAgreement agreement;
    private final ReferenceScoresPages pages;
    private final ApplicationEventPublisher events;

    ReferenceScoresController(
            ReferenceAgreement agreement, ReferenceScoresPages pages, ApplicationEventPublisher events) {
        this.agreement = agreement;
        this.pages = pages;
        this.events = events;
    }

    @GetMapping("/cohort/reference")
    String all(@AuthenticationPrincipal SignedIn who, @RequestParam @Nullable UUID programme, Model model) {
        ReferenceReport report = agreement.all(who, programme);
        UUID of = report.programme().id();
        Audited.Item seen = new Audited.Item(
                "reference-scores", of, null, report.programme().name());
        events.publishEvent(new RecordSeen(who, null, of, seen, null));
        model.addAttribute("page", pages.all(report));
        return "cohort/reference-scores";
    }

    @GetMapping("/my-scoring/reference")
    String own(@AuthenticationPrincipal SignedIn who, @RequestParam @Nullable UUID programme, Model model) {
        model.addAttribute("page", pages.own(who, agreement.own(who, programme)));
        return "cohort/my-reference-scores";
    }
}
