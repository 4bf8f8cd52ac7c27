package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.people.VisitorAccess;
import org.scrubline.people.Visitors;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The director's page of visitors: what is open to whom, what for and until when. */
@Controller
@RequestMapping("/visitors")
class VisitorController {

    private final Visitors visitors;
    private final People people;
    private final VisitorPages pages;
    private final Wording wording;

    VisitorController(Visitors visitors, People people, VisitorPages pages, Wording wording) {
        this.visitors = visitors;
        this.people = people;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, Model model) {
        Programme programme = directed(who);
        return show(who, programme, VisitorInput.fresh(pages.today(programme)), List.of(), model);
    }

    @PostMapping
    String give(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam MultiValueMap<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme programme = directed(who);
        VisitorInput input = new VisitorInput(typed);
        return input.read()
                .<Attempt<VisitorAccess>>fold(request -> visitors.give(who, programme.id(), request), Attempt::refused)
                .fold(access -> done(redirect, "people.visitors.given", access), reasons -> {
                    response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
                    return show(who, programme, input, reasons, model);
                });
    }

    @PostMapping("/{id}/end")
    String end(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        visitors.end(who, id);
        redirect.addFlashAttribute("flash", wording.text("people.visitors.ended"));
        return "redirect:/visitors";
    }

    private String done(RedirectAttributes redirect, String key, VisitorAccess access) {
        redirect.addFlashAttribute("flash", wording.text(key, access.visitor().printedName()));
        return "redirect:/visitors";
    }

    private String show(SignedIn who, Programme programme, VisitorInput input, List<Refusal> reasons, Model model) {
        Map<String, String> values = input.values();
        model.addAttribute("form", new FormView(values, wording.errors(reasons)));
        model.addAttribute("chosen", input.all("trainees"));
        model.addAttribute("page", pages.page(programme, visitors.given(who, programme.id())));
        return "people/visitors";
    }

    /** The first programme this person directs; for anyone else the page does not exist. */
    private Programme directed(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR)
                .map(SignedIn.Grant::programmeId)
                .sorted()
                .findFirst()
                .map(people::programme)
                .orElseThrow(NotFound::new);
    }
}
