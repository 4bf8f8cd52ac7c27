package org.scrubline.rubric.web;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.FreshLogIn;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.change.RubricDrafts;
import org.scrubline.rubric.change.RubricPeople;
import org.scrubline.rubric.change.RubricReleases;
import org.scrubline.rubric.change.RubricReviews;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What a draft changes, what a second person says to it, and its publication. */
@Controller
@RequestMapping(DraftController.PATH)
class RubricReviewController {

    private final RubricDrafts drafts;
    private final RubricReviews reviews;
    private final RubricReleases releases;
    private final RubricChangePages pages;
    private final FreshLogIn fresh;
    private final Wording wording;

    RubricReviewController(
            RubricDrafts drafts,
            RubricReviews reviews,
            RubricReleases releases,
            RubricChangePages pages,
            FreshLogIn fresh,
            Wording wording) {
        this.drafts = drafts;
        this.reviews = reviews;
        this.releases = releases;
        this.pages = pages;
        this.fresh = fresh;
        this.wording = wording;
    }

    /** A request of this page with its form. */
    private record Request(
            SignedIn who,
            String procedure,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            Map<String, String> typed) {

        String typed(String field) {
            return typed.getOrDefault(field, "");
        }
    }

    @GetMapping("/compare")
    String page(
            @AuthenticationPrincipal SignedIn who, @PathVariable String procedure, HttpSession session, Model model) {
        return show(who, procedure, session, model, FormView.empty());
    }

    @PostMapping("/review")
    String review(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable String procedure,
            @RequestParam Map<String, String> typed,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        requireDraft(who, procedure);
        Request request = new Request(who, procedure, session, model, response, typed);
        Supplier<Attempt<String>> deed = () -> reviews.review(
                        who, procedure, request.typed("hash"), request.typed("answer"), request.typed("words"))
                .fold(
                        review -> Attempt.done(review.agrees() ? "rubric.review.agreed" : "rubric.review.objected"),
                        Attempt::refused);
        return answer(request, deed, redirect, "redirect:/rubrics/changes/" + procedure + "/compare");
    }

    @PostMapping("/publish")
    String publish(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable String procedure,
            @RequestParam Map<String, String> typed,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        RubricPeople.requireDirector(who);
        requireDraft(who, procedure);
        Request request = new Request(who, procedure, session, model, response, typed);
        Supplier<Attempt<String>> deed = () -> releases.publish(
                        who, procedure, request.typed("hash"), request.typed("day"), request.typed("reason"))
                .fold(published -> Attempt.done("rubric.publish.done"), Attempt::refused);
        return answer(request, deed, redirect, "redirect:/rubrics/changes/" + procedure);
    }

    private void requireDraft(SignedIn who, String procedure) {
        if (drafts.open(who, procedure).isEmpty()) {
            throw new NotFound();
        }
    }

    /** Nothing is said or published by somebody who did not just show who they are. */
    private String answer(Request request, Supplier<Attempt<String>> deed, RedirectAttributes redirect, String next) {
        if (!fresh.fresh(request.session())) {
            return refused(request, List.of(Refusal.of("refusal.step-up")));
        }
        return deed.get()
                .fold(
                        key -> {
                            redirect.addFlashAttribute("flash", wording.text(key));
                            return next;
                        },
                        reasons -> refused(request, reasons));
    }

    private String refused(Request request, List<Refusal> reasons) {
        request.response().setStatus(422);
        FormView form = new FormView(request.typed(), wording.errors(reasons));
        return show(request.who(), request.procedure(), request.session(), request.model(), form);
    }

    private String show(SignedIn who, String procedure, HttpSession session, Model model, FormView form) {
        model.addAttribute("page", pages.changes(who, procedure));
        model.addAttribute("recent", fresh.fresh(session));
        model.addAttribute("form", form);
        return "rubric/changes";
    }
}
