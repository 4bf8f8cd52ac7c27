package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.LedProgrammes;
import org.scrubline.people.Placement;
import org.scrubline.people.PlacementEntry;
import org.scrubline.people.Placements;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Where each trainee of a programme works and when. */
@Controller
@RequestMapping(PlacementsController.PATH)
class PlacementsController {

    static final String PATH = "/placements";
    private static final int UNPROCESSABLE = 422;

    private final Placements placements;
    private final PlacementPages pages;
    private final LedProgrammes led;
    private final Wording wording;

    PlacementsController(Placements placements, PlacementPages pages, LedProgrammes led, Wording wording) {
        this.placements = placements;
        this.pages = pages;
        this.led = led;
        this.wording = wording;
    }

    @GetMapping
    String page(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            @RequestParam(required = false) @Nullable YearMonth from,
            Model model) {
        return show(led.of(who, programme), from, model, FormView.empty());
    }

    @PostMapping
    String place(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme of = led.of(who, programme);
        PlacementEntry entry = new PlacementEntry(
                text(typed, "trainee"),
                text(typed, "site"),
                text(typed, "first"),
                text(typed, "last"),
                text(typed, "share"));
        return placements
                .place(who, of.id(), entry)
                .fold(
                        placed -> done(redirect, of, "placements.placed"),
                        reasons -> refused(of, typed, reasons, model, response));
    }

    @PostMapping("/end")
    String end(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme of = led.of(who, programme);
        Attempt<Placement> ended = placements.of(of.id()).stream()
                .filter(one -> one.began() && one.id().toString().equals(typed.get("placement")))
                .findFirst()
                .map(one -> placements.end(who, of.id(), one.id(), text(typed, "lastDay")))
                .orElseGet(() -> Attempt.refused(Refusal.at("placement", "refusal.placement.choose")));
        return ended.fold(
                one -> done(redirect, of, "placements.ended"), reasons -> refused(of, typed, reasons, model, response));
    }

    private String done(RedirectAttributes redirect, Programme programme, String key) {
        redirect.addFlashAttribute("flash", wording.text(key));
        return "redirect:" + PATH + "?programme=" + programme.id();
    }

    private String refused(
            Programme programme,
            Map<String, String> typed,
            List<Refusal> reasons,
            Model model,
            HttpServletResponse response) {
        response.setStatus(UNPROCESSABLE);
        return show(programme, null, model, new FormView(typed, wording.errors(reasons)));
    }

    private String show(Programme programme, @Nullable YearMonth from, Model model, FormView form) {
        model.addAttribute("page", pages.of(programme, from));
        model.addAttribute("form", form);
        return "people/placements";
    }

    private static String text(Map<String, String> typed, String field) {
        return typed.getOrDefault(field, "");
    }
}
