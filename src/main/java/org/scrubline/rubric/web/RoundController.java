package org.scrubline.rubric.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.people.Person;
import org.scrubline.platform.FormView;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.change.RubricPeople;
import org.scrubline.rubric.survey.ExpertRounds;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Where experts are asked about the steps of a rubric, and answer. */
@Controller
@RequestMapping(RoundController.PATH)
class RoundController {

    static final String PATH = "/rubrics/rounds";

    private final ExpertRounds rounds;
    private final RoundPages pages;
    private final Wording wording;

    RoundController(ExpertRounds rounds, RoundPages pages, Wording wording) {
        this.rounds = rounds;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    String list(@AuthenticationPrincipal SignedIn who, Model model) {
        return list(who, model, FormView.empty(), List.of());
    }

    @PostMapping
    String open(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String about,
            @RequestParam(defaultValue = "") String day,
            @RequestParam(defaultValue = "") List<String> experts,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        RubricPeople.requireDirector(who);
        Set<UUID> asked = rounds.candidates(who).stream()
                .map(Person::id)
                .filter(id -> experts.contains(id.toString()))
                .collect(Collectors.toSet());
        return rounds.open(who, pages.chosen(who, about), day, asked)
                .fold(round -> done(redirect, "rubric.round.opened", "/" + round.id()), reasons -> {
                    response.setStatus(422);
                    Map<String, String> typed = Map.of("about", about, "day", day);
                    return list(who, model, new FormView(typed, wording.errors(reasons)), experts);
                });
    }

    @GetMapping("/{id}")
    String read(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        return show(who, id, model, FormView.empty());
    }

    @PostMapping("/{id}")
    String answer(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return rounds.answer(who, id, typed)
                .fold(answer -> done(redirect, "rubric.round.thanks", "/" + id), reasons -> {
                    response.setStatus(422);
                    return show(who, id, model, new FormView(typed, wording.errors(reasons)));
                });
    }

    private String done(RedirectAttributes redirect, String key, String where) {
        redirect.addFlashAttribute("flash", wording.text(key));
        return "redirect:" + PATH + where;
    }

    private String list(SignedIn who, Model model, FormView form, List<String> experts) {
        model.addAttribute("page", pages.list(who));
        model.addAttribute("form", form);
        model.addAttribute("chosen", experts);
        return "rubric/rounds";
    }

    private String show(SignedIn who, UUID id, Model model, FormView form) {
        model.addAttribute("page", pages.round(who, id, form));
        model.addAttribute("form", form);
        return "rubric/round";
    }
}
