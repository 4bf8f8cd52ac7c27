package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.scrubline.people.LedProgrammes;
import org.scrubline.people.Site;
import org.scrubline.people.Sites;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The sites: added, renamed, closed. */
@Controller
@RequestMapping(SitesController.PATH)
class SitesController {

    static final String PATH = "/sites";
    private static final int UNPROCESSABLE = 422;

    private final Sites sites;
    private final LedProgrammes led;
    private final Wording wording;

    SitesController(Sites sites, LedProgrammes led, Wording wording) {
        this.sites = sites;
        this.led = led;
        this.wording = wording;
    }

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, Model model) {
        led.of(who, null);
        return show(model, FormView.empty());
    }

    @PostMapping
    String add(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        led.of(who, null);
        return sites.add(who, text(typed, "code"), text(typed, "name"), text(typed, "zone"))
                .fold(
                        site -> flash(redirect, "people.site.added", site.name()),
                        reasons -> refused(typed, reasons, model, response));
    }

    @PostMapping("/name")
    String rename(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        led.of(who, null);
        return chosen(typed, "renamed", site -> sites.rename(who, site.id(), text(typed, "newName")))
                .fold(
                        site -> flash(redirect, "people.site.renamed", site.code(), site.name()),
                        reasons -> refused(typed, reasons, model, response));
    }

    @PostMapping("/close")
    String close(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        led.of(who, null);
        return chosen(typed, "closed", site -> sites.close(who, site.id(), text(typed, "lastDay")))
                .fold(
                        site -> site.closedOn() == null
                                ? flash(redirect, "people.site.opened", site.name())
                                : flash(redirect, "people.site.closed", site.name(), site.closedOn()),
                        reasons -> refused(typed, reasons, model, response));
    }

    private Attempt<Site> chosen(Map<String, String> typed, String field, Function<Site, Attempt<Site>> change) {
        return sites.all().stream()
                .filter(site -> site.id().toString().equals(typed.get(field)))
                .findFirst()
                .map(change)
                .orElseGet(() -> Attempt.refused(Refusal.at(field, "refusal.placement.site")));
    }

    private String flash(RedirectAttributes redirect, String key, Object... arguments) {
        redirect.addFlashAttribute("flash", wording.text(key, arguments));
        return "redirect:" + PATH;
    }

    private String refused(
            Map<String, String> typed, List<Refusal> reasons, Model model, HttpServletResponse response) {
        response.setStatus(UNPROCESSABLE);
        return show(model, new FormView(typed, wording.errors(reasons)));
    }

    private String show(Model model, FormView form) {
        List<Site> all = sites.all();
        model.addAttribute("sites", table(all));
        model.addAttribute(
                "options",
                all.stream()
                        .map(site -> new ZoneOptions.Option(site.id().toString(), site.name()))
                        .toList());
        model.addAttribute("zones", ZoneOptions.all());
        model.addAttribute("form", form);
        return "people/sites";
    }

    private TableView table(List<Site> all) {
        return new TableView(
                Stream.of("code", "name", "zone", "closed")
                        .map(key -> new Column(wording.text("people.sites." + key), false))
                        .toList(),
                all.stream()
                        .map(site -> List.of(
                                Cell.of(site.code()),
                                Cell.of(site.name()),
                                Cell.of(site.zone().getId()),
                                Cell.of(site.closedOn() == null ? "–" : String.valueOf(site.closedOn()))))
                        .toList());
    }

    private static String text(Map<String, String> typed, String field) {
        return typed.getOrDefault(field, "");
    }
}
