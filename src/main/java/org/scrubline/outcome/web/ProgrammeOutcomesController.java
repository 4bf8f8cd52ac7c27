package org.scrubline.outcome.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.OutcomeReport;
import org.scrubline.outcome.ProgrammeOutcomes;
import org.scrubline.outcome.ProgrammeOutcomes.TraineeOutcomeCases;
import org.scrubline.outcome.ProgrammeOutcomes.Wish;
import org.scrubline.outcome.SuccessSet;
import org.scrubline.people.Programme;
import org.scrubline.platform.Audited;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Outcomes of a whole programme, and the cases behind a number. */
@Controller
@RequestMapping("/outcomes/programme")
class ProgrammeOutcomesController {

    private final ProgrammeOutcomes outcomes;
    private final ProgrammeOutcomesPages pages;
    private final ApplicationEventPublisher events;

    ProgrammeOutcomesController(
            ProgrammeOutcomes outcomes, ProgrammeOutcomesPages pages, ApplicationEventPublisher events) {
        this.outcomes = outcomes;
        this.pages = pages;
        this.events = events;
    }

    @GetMapping
    String programme(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam @Nullable UUID programme,
            @RequestParam(defaultValue = "") String family,
            @RequestParam(defaultValue = "") String set,
            Model model) {
        OutcomeReport report = outcomes.read(who, wish(programme, family, set));
        Programme of = report.programme();
        Audited.Item list = new Audited.Item("programme-list", of.id(), null, of.name());
        events.publishEvent(new RecordSeen(who, null, of.id(), list, null));
        boolean enters = OutcomesController.ENTER.stream().anyMatch(role -> who.has(role, of.id()));
        model.addAttribute("page", pages.page(report, enters));
        return "outcome/programme";
    }

    @GetMapping("/cases")
    String cases(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam @Nullable UUID programme,
            @RequestParam(defaultValue = "") String family,
            @RequestParam(defaultValue = "") String set,
            @RequestParam @Nullable UUID trainee,
            Model model) {
        if (trainee == null) {
            throw new NotFound();
        }
        TraineeOutcomeCases behind = outcomes.cases(who, wish(programme, family, set), trainee);
        Audited.Item item = new Audited.Item("outcome", trainee, null, "");
        events.publishEvent(
                new RecordSeen(who, trainee, behind.report().programme().id(), item, null));
        model.addAttribute("name", behind.name());
        model.addAttribute("definition", pages.definition(behind.report()));
        model.addAttribute("table", pages.cases(behind));
        model.addAttribute(
                "back",
                "/outcomes/programme?programme=%s&family=%s&set=%s"
                        .formatted(behind.report().programme().id(), family, set));
        return "outcome/cases";
    }

    private static Wish wish(@Nullable UUID programme, String family, String set) {
        Family of = family.equals(ProgrammeOutcomesPages.EVERY)
                ? null
                : OutcomesController.one(Family.class, family).orElse(Family.TRABECULECTOMY);
        return new Wish(
                programme, of, OutcomesController.one(SuccessSet.class, set).orElse(SuccessSet.UP_TO_18));
    }
}
