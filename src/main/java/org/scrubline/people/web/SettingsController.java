package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.people.SettingKey;
import org.scrubline.people.Settings;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The numbers a programme works by, and who was introduced to scoring. */
@Controller
@RequestMapping("/settings")
class SettingsController {

    private static final int UNPROCESSABLE = 422;

    private final Settings settings;
    private final People people;
    private final SettingsPages pages;
    private final Wording wording;

    SettingsController(Settings settings, People people, SettingsPages pages, Wording wording) {
        this.settings = settings;
        this.people = people;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    String list(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        return list(led(who, programme), model);
    }

    private String list(Programme programme, Model model) {
        model.addAttribute("programme", programme);
        model.addAttribute("settings", pages.list(programme));
        return "people/settings";
    }

    @GetMapping("/{key}")
    String one(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable SettingKey key,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        return one(led(who, programme), key, FormView.empty(), model);
    }

    private String one(Programme programme, SettingKey key, FormView form, Model model) {
        model.addAttribute("page", pages.one(programme, key));
        model.addAttribute("form", form);
        return "people/setting";
    }

    @PostMapping("/{key}")
    String change(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable SettingKey key,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme programme = led(who, id(typed.getOrDefault("programme", "")));
        return settings.change(
                        who, programme.id(), key, typed.getOrDefault("value", ""), typed.getOrDefault("reason", ""))
                .fold(
                        now -> {
                            redirect.addFlashAttribute("flash", wording.text("settings.changed"));
                            return "redirect:/settings/" + key + "?programme=" + programme.id();
                        },
                        reasons -> one(programme, key, refused(typed, reasons, response), model));
    }

    private FormView refused(Map<String, String> typed, List<Refusal> reasons, HttpServletResponse response) {
        response.setStatus(UNPROCESSABLE);
        return new FormView(typed, wording.errors(reasons));
    }

    /** The programme asked for, or the first by name, among those this person directs or administers. */
    private Programme led(SignedIn who, @Nullable UUID programme) {
        return people.programmes().stream()
                .filter(one -> who.has(Role.DIRECTOR, one.id()) || who.has(Role.ADMINISTRATOR, one.id()))
                .filter(one -> programme == null || one.id().equals(programme))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    /** An id of a form; null for what is none. */
    private static @Nullable UUID id(String typed) {
        try {
            return UUID.fromString(typed);
        } catch (IllegalArgumentException e) {
            return null;
        }
    }
}
