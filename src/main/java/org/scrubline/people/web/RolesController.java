package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.people.Roles;
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
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Where an administrator gives roles to people the programme knows, and ends those of people who leave. */
@Controller
@RequestMapping(RolesController.PATH)
class RolesController {

    static final String PATH = "/people/roles";
    private static final String BETWEEN = "/";

    private final Roles roles;
    private final People people;
    private final Wording wording;

    RolesController(Roles roles, People people, Wording wording) {
        this.roles = roles;
        this.people = people;
        this.wording = wording;
    }

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, Model model) {
        return show(administered(who), model, FormView.empty());
    }

    @PostMapping
    String give(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme programme = administered(who);
        Optional<Person> person = roles.everyone(programme.id()).stream()
                .filter(one -> one.id().toString().equals(typed.get("person")))
                .findFirst();
        Optional<Role> role = role(typed.getOrDefault("role", ""));
        if (person.isEmpty() || role.isEmpty()) {
            Refusal unknown = person.isEmpty()
                    ? Refusal.at("person", "refusal.factor.person")
                    : Refusal.at("role", "refusal.role");
            return refused(programme, typed, List.of(unknown), model, response);
        }
        roles.give(programme.id(), person.get().id(), role.get());
        return done(redirect, "people.roles.given", person.get().printedName(), role.get());
    }

    @PostMapping("/end")
    String end(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme programme = administered(who);
        Optional<Roles.Held> held = roles.held(programme.id()).stream()
                .filter(one -> value(one).equals(typed.get("held")))
                .findFirst();
        if (held.isEmpty()) {
            return refused(programme, typed, List.of(Refusal.at("held", "refusal.role.held")), model, response);
        }
        return roles.end(programme.id(), held.get().personId(), held.get().role(), typed.getOrDefault("reason", ""))
                .fold(
                        ended -> done(redirect, "people.roles.ended", ended.name(), ended.role()),
                        reasons -> refused(programme, typed, reasons, model, response));
    }

    private String done(RedirectAttributes redirect, String key, String name, Role role) {
        redirect.addFlashAttribute("flash", wording.text(key, name, wording.text(role.messageKey())));
        return "redirect:" + PATH;
    }

    private String refused(
            Programme programme,
            Map<String, String> typed,
            List<Refusal> reasons,
            Model model,
            HttpServletResponse response) {
        response.setStatus(422);
        return show(programme, model, new FormView(typed, wording.errors(reasons)));
    }

    private String show(Programme programme, Model model, FormView form) {
        model.addAttribute("programme", programme);
        model.addAttribute(
                "held",
                roles.held(programme.id()).stream()
                        .map(one -> new ZoneOptions.Option(
                                value(one),
                                one.name() + ", " + wording.text(one.role().messageKey())))
                        .toList());
        model.addAttribute(
                "persons",
                roles.everyone(programme.id()).stream()
                        .map(one -> new ZoneOptions.Option(one.id().toString(), one.printedName()))
                        .toList());
        model.addAttribute(
                "roles",
                Arrays.stream(Role.values())
                        .map(role -> new ZoneOptions.Option(role.name(), wording.text(role.messageKey())))
                        .toList());
        model.addAttribute("form", form);
        return "people/roles";
    }

    private static String value(Roles.Held held) {
        return held.personId() + BETWEEN + held.role();
    }

    private static Optional<Role> role(String typed) {
        return Arrays.stream(Role.values())
                .filter(role -> role.name().equals(typed))
                .findFirst();
    }

    /** The first programme the person administers; for anyone else this page does not exist. */
    private Programme administered(SignedIn who) {
        UUID programme = who.grants().stream()
                .filter(grant -> grant.role() == Role.ADMINISTRATOR)
                .map(SignedIn.Grant::programmeId)
                .sorted()
                .findFirst()
                .orElseThrow(NotFound::new);
        return people.programme(programme);
    }
}
