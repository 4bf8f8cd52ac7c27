package org.scrubline.removal.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.removal.Removals;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Records whose term is over; for the director and the administrator. */
@Controller
@RequestMapping("/removals")
class RemovalController {

    private final Removals removals;
    private final People people;
    private final RemovalPages pages;
    private final Wording wording;

    RemovalController(Removals removals, People people, RemovalPages pages, Wording wording) {
        this.removals = removals;
        this.people = people;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    ModelAndView list(@AuthenticationPrincipal SignedIn who) {
        return new ModelAndView("removal/removals", "page", pages.page(who, overseen(who)));
    }

    @GetMapping("/trainees/{trainee}")
    ModelAndView ask(@AuthenticationPrincipal SignedIn who, @PathVariable UUID trainee) {
        return form(pages.asking(who, overseen(who), trainee), FormView.empty());
    }

    @PostMapping("/trainees/{trainee}")
    ModelAndView ask(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID trainee,
            @RequestParam Map<String, String> typed,
            RedirectAttributes redirect) {
        Programme programme = overseen(who);
        String reason = typed.getOrDefault("reason", "");
        Attempt<UUID> asked = removals.ask(who, programme.id(), trainee, reason, credential(typed));
        return asked.fold(
                done -> done(redirect, "removal.ask.done"),
                reasons -> refused(pages.asking(who, programme, trainee), reason, reasons));
    }

    @GetMapping("/{request}")
    ModelAndView confirm(@AuthenticationPrincipal SignedIn who, @PathVariable UUID request) {
        return form(pages.confirming(who, overseen(who), request), FormView.empty());
    }

    @PostMapping("/{request}")
    ModelAndView confirm(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID request,
            @RequestParam Map<String, String> typed,
            RedirectAttributes redirect) {
        Programme programme = overseen(who);
        return removals.confirm(who, request, credential(typed))
                .fold(
                        done -> done(redirect, "removal.confirm.done"),
                        reasons -> refused(pages.confirming(who, programme, request), "", reasons));
    }

    private static Credential credential(Map<String, String> typed) {
        return Credential.of(typed.getOrDefault("password", ""), typed.getOrDefault("assertion", ""));
    }

    private ModelAndView done(RedirectAttributes redirect, String key) {
        redirect.addFlashAttribute("flash", wording.text(key));
        return new ModelAndView("redirect:/removals");
    }

    private ModelAndView refused(Optional<RemovalPages.Form> form, String reason, List<Refusal> reasons) {
        List<Refusal> placed = reasons.stream()
                .map(one -> one.field().equals("reason")
                        ? one
                        : Refusal.at(
                                "password", one.messageKey(), one.arguments().toArray()))
                .toList();
        ModelAndView page = form(form, new FormView(Map.of("reason", reason), wording.errors(placed)));
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private static ModelAndView form(Optional<RemovalPages.Form> form, FormView typed) {
        ModelAndView page = new ModelAndView("removal/removal", "page", form.orElseThrow(NotFound::new));
        page.addObject("form", typed);
        return page;
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
