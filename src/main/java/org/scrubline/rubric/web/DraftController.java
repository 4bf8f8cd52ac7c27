package org.scrubline.rubric.web;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Map;
import org.scrubline.platform.FormView;
import org.scrubline.platform.FreshLogIn;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.change.RubricDrafts;
import org.scrubline.rubric.change.RubricPeople;
import org.scrubline.rubric.change.RubricReleases;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Where directors write the next version of a rubric, and retire a procedure. */
@Controller
@RequestMapping(DraftController.PATH)
class DraftController {

    static final String PATH = "/rubrics/changes/{procedure}";
    private static final String BACK = "redirect:/rubrics/changes/";

    private final RubricDrafts drafts;
    private final RubricReleases releases;
    private final RubricChangePages pages;
    private final FreshLogIn fresh;
    private final Wording wording;

    DraftController(
            RubricDrafts drafts, RubricReleases releases, RubricChangePages pages, FreshLogIn fresh, Wording wording) {
        this.drafts = drafts;
        this.releases = releases;
        this.pages = pages;
        this.fresh = fresh;
        this.wording = wording;
    }

    @GetMapping
    String page(
            @AuthenticationPrincipal SignedIn who, @PathVariable String procedure, HttpSession session, Model model) {
        return show(who, procedure, session, model, FormView.empty());
    }

    @PostMapping
    String begin(@AuthenticationPrincipal SignedIn who, @PathVariable String procedure, RedirectAttributes redirect) {
        drafts.begin(who, procedure);
        return done(redirect, procedure, "rubric.draft.begun");
    }

    @PostMapping("/save")
    String save(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable String procedure,
            @RequestParam(defaultValue = "0") int lock,
            @RequestParam(defaultValue = "") String source,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return drafts.save(who, procedure, lock, source)
                .fold(
                        saved -> done(
                                redirect,
                                procedure,
                                drafts.read(saved).faults().isEmpty()
                                        ? "rubric.draft.saved"
                                        : "rubric.draft.saved.faulty"),
                        reasons ->
                                refused(who, procedure, session, model, response, Map.of("source", source), reasons));
    }

    @PostMapping("/drop")
    String drop(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable String procedure,
            @RequestParam(defaultValue = "0") int lock,
            RedirectAttributes redirect) {
        drafts.drop(who, procedure, lock);
        return done(redirect, procedure, "rubric.draft.dropped");
    }

    @PostMapping("/retire")
    String retire(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable String procedure,
            @RequestParam(defaultValue = "") String day,
            @RequestParam(defaultValue = "") String reason,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        RubricPeople.requireDirector(who);
        Map<String, String> typed = Map.of("day", day, "reason", reason);
        if (!fresh.fresh(session)) {
            return refused(who, procedure, session, model, response, typed, List.of(Refusal.of("refusal.step-up")));
        }
        return releases.retire(who, procedure, day, reason)
                .fold(
                        from -> done(redirect, procedure, "rubric.retire.done"),
                        reasons -> refused(who, procedure, session, model, response, typed, reasons));
    }

    private String done(RedirectAttributes redirect, String procedure, String key) {
        redirect.addFlashAttribute("flash", wording.text(key));
        return BACK + procedure;
    }

    private String refused(
            SignedIn who,
            String procedure,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            Map<String, String> typed,
            List<Refusal> reasons) {
        response.setStatus(422);
        return show(who, procedure, session, model, new FormView(typed, wording.errors(reasons)));
    }

    private String show(SignedIn who, String procedure, HttpSession session, Model model, FormView form) {
        model.addAttribute("page", pages.draft(who, procedure));
        model.addAttribute("recent", fresh.fresh(session));
        model.addAttribute("form", form);
        return "rubric/draft";
    }
}
