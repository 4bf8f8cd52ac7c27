package org.scrubline.retention.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.retention.Retention;
import org.scrubline.retention.RetentionTerms;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** How long records are kept, and holds; for the director and the administrator. */
@Controller
@RequestMapping("/retention")
class RetentionController {

    private final Retention retention;
    private final People people;
    private final RetentionPages pages;
    private final Wording wording;

    RetentionController(Retention retention, People people, RetentionPages pages, Wording wording) {
        this.retention = retention;
        this.people = people;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, Model model) {
        Programme programme = overseen(who);
        return show(who, programme, pages.stored(programme), FormView.empty(), model);
    }

    @PostMapping("/terms")
    String change(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme programme = overseen(who);
        return RetentionPages.terms(typed)
                .<Attempt<RetentionTerms>>fold(terms -> retention.change(who, programme.id(), terms), Attempt::refused)
                .fold(
                        terms -> done(redirect, "retention.changed"),
                        refused(typed, response, form -> show(who, programme, form, FormView.empty(), model)));
    }

    @PostMapping("/holds")
    String hold(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme programme = overseen(who);
        UUID trainee = RetentionPages.trainee(typed).orElse(null);
        return retention
                .hold(who, programme.id(), trainee, typed.getOrDefault("reason", ""))
                .fold(
                        hold -> done(redirect, "retention.held"),
                        refused(typed, response, form -> show(who, programme, pages.stored(programme), form, model)));
    }

    @PostMapping("/holds/{id}/end")
    String end(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        retention.end(who, id);
        return done(redirect, "retention.hold.ended");
    }

    private String done(RedirectAttributes redirect, String key) {
        redirect.addFlashAttribute("flash", wording.text(key));
        return "redirect:/retention";
    }

    private Function<List<Refusal>, String> refused(
            Map<String, String> typed, HttpServletResponse response, Function<FormView, String> page) {
        return reasons -> {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page.apply(new FormView(typed, wording.errors(reasons)));
        };
    }

    private String show(SignedIn who, Programme programme, FormView terms, FormView hold, Model model) {
        model.addAttribute("terms", terms);
        model.addAttribute("hold", hold);
        model.addAttribute("page", pages.page(who, programme));
        return "retention/retention";
    }

    /** The first programme this person directs or administers; for anyone else the page does not exist. */
    private Programme overseen(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR || grant.role() == Role.ADMINISTRATOR)
                .map(SignedIn.Grant::programmeId)
                .sorted()
                .findFirst()
                .map(people::programme)
                .orElseThrow(NotFound::new);
    }
}
