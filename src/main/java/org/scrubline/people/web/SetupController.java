package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.scrubline.people.FirstStart;
import org.scrubline.people.FirstStartEntry;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The first start. Once an account exists this address is as unknown as any other. */
@Controller
@RequestMapping("/setup")
class SetupController {

    private static final List<String> FIELDS =
            List.of("token", "organisation", "programme", "siteCode", "siteName", "zone", "printedName", "username");

    private final FirstStart firstStart;
    private final Wording wording;

    SetupController(FirstStart firstStart, Wording wording) {
        this.firstStart = firstStart;
        this.wording = wording;
    }

    @ModelAttribute("zones")
    List<ZoneOptions.Option> zones() {
        return ZoneOptions.all();
    }

    @GetMapping
    String form(Model model) {
        refuseOnceRunning();
        model.addAttribute("form", FormView.empty());
        return "people/setup";
    }

    @PostMapping
    String complete(@RequestParam Map<String, String> typed, Model model, HttpServletResponse response) {
        refuseOnceRunning();
        return firstStart.complete(entry(typed)).fold(tenant -> "redirect:/login?ready", reasons -> {
            response.setStatus(422);
            model.addAttribute("form", new FormView(kept(typed), wording.errors(reasons)));
            return "people/setup";
        });
    }

    private void refuseOnceRunning() {
        if (!firstStart.waiting()) {
            throw new NotFound();
        }
    }

    private static FirstStartEntry entry(Map<String, String> typed) {
        return new FirstStartEntry(
                typed.getOrDefault("token", ""),
                typed.getOrDefault("organisation", ""),
                typed.getOrDefault("programme", ""),
                typed.getOrDefault("siteCode", ""),
                typed.getOrDefault("siteName", ""),
                typed.getOrDefault("zone", ""),
                typed.getOrDefault("printedName", ""),
                typed.getOrDefault("username", ""),
                typed.getOrDefault("password", ""));
    }

    /** Everything but the password, which is never sent back. */
    private static Map<String, String> kept(Map<String, String> typed) {
        return typed.entrySet().stream()
                .filter(field -> FIELDS.contains(field.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }
}
