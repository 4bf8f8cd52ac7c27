package org.scrubline.cohort.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.SignalReport;
import org.scrubline.cohort.Signals;
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

/** Early signals, how supervisors score, and each supervisor's own page. */
@Controller
class SignalsController {

    private final Signals signals;
    private final SignalPages pages;
    private final ScorerPages scorerPages;
    private final ApplicationEventPublisher events;

    SignalsController(Signals signals, SignalPages pages, ScorerPages scorerPages, ApplicationEventPublisher events) {
        this.signals = signals;
        this.pages = pages;
        this.scorerPages = scorerPages;
        this.events = events;
    }

    @GetMapping("/cohort/signals")
    String trainees(@AuthenticationPrincipal SignedIn who, @RequestParam @Nullable UUID programme, Model model) {
        SignalReport report = signals.ofTrainees(who, programme);
        events.publishEvent(seen(who, report.programme()));
        model.addAttribute("page", pages.page(report));
        return "cohort/signals";
    }

    @GetMapping("/cohort/scorers")
    String scorers(@AuthenticationPrincipal SignedIn who, @RequestParam @Nullable UUID programme, Model model) {
        SignalReport report = signals.ofScorers(who, programme);
        events.publishEvent(seen(who, report.programme()));
        model.addAttribute("page", scorerPages.page(report));
        return "cohort/scorers";
    }

    @GetMapping("/my-scoring")
    String own(@AuthenticationPrincipal SignedIn who, @RequestParam @Nullable UUID programme, Model model) {
        model.addAttribute("page", scorerPages.own(signals.own(who, programme)));
        return "cohort/my-scoring";
    }

    /** As with the cohort: one reading, about nobody in particular. */
    private static RecordSeen seen(SignedIn who, Programme programme) {
        Audited.Item list = new Audited.Item("programme-list", programme.id(), null, programme.name());
        return new RecordSeen(who, null, programme.id(), list, null);
    }
}
