package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.scrubline.people.Invitations;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.InvitationLife;
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

/** The administrator's page: who is in the programme, and whom to invite. */
@Controller
@RequestMapping("/people")
class PeopleController {

    private final People people;
    private final Invitations invitations;
    private final Wording wording;

    PeopleController(People people, Invitations invitations, Wording wording) {
        this.people = people;
        this.invitations = invitations;
        this.wording = wording;
    }

    /** One role and who holds it. */
    record Holders(String role, List<String> names) {}

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, Model model) {
        return show(who, model, FormView.empty());
    }

    @PostMapping("/persons")
    String addPerson(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme programme = administered(who);
        Attempt<Invitations.Made> made = InvitationLife.chosen(typed.get("life"))
                .then(life -> role(typed.getOrDefault("role", ""))
                        .then(role -> add(programme, typed, role))
                        .then(person -> invitations.make(programme.id(), person.personId(), life)));
        return made.fold(
                invited -> handOver(invited, redirect), refused(typed, response, form -> show(who, model, form)));
    }

    /** Another code for somebody who never came in; the one before ends with it. */
    @PostMapping("/invitations")
    String inviteAgain(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme programme = administered(who);
        Optional<UUID> person = invitations.waiting(programme.id()).stream()
                .map(Invitations.Waiting::personId)
                .filter(id -> id.toString().equals(typed.get("person")))
                .findFirst();
        Attempt<Invitations.Made> made = InvitationLife.chosen(typed.get("life"))
                .then(life -> person.map(id -> invitations.make(programme.id(), id, life))
                        .orElseGet(() -> Attempt.refused(Refusal.at("person", "refusal.invitation.person"))));
        return made.fold(invited -> handOver(invited, redirect), reasons -> {
            response.setStatus(422);
            model.addAttribute("again", new FormView(typed, wording.errors(reasons)));
            return show(who, model, FormView.empty());
        });
    }

    private String handOver(Invitations.Made made, RedirectAttributes redirect) {
        redirect.addFlashAttribute("invited", made.username());
        redirect.addFlashAttribute("code", made.code());
        redirect.addFlashAttribute("life", wording.text(made.life().messageKey()));
        return "redirect:/people";
    }

    private Attempt<People.NewPerson> add(Programme programme, Map<String, String> typed, Role role) {
        String name = typed.getOrDefault("printedName", "");
        String username = typed.getOrDefault("username", "");
        return typed.containsKey("shared")
                ? people.addSharedLogIn(programme.id(), name, username, role)
                : people.addPerson(programme.id(), name, username, role);
    }

    private Function<List<Refusal>, String> refused(
            Map<String, String> typed, HttpServletResponse response, Function<FormView, String> page) {
        return reasons -> {
            response.setStatus(422);
            return page.apply(new FormView(typed, wording.errors(reasons)));
        };
    }

    private String show(SignedIn who, Model model, FormView person) {
        Programme programme = administered(who);
        model.addAttribute("programme", programme);
        model.addAttribute("holders", holders(programme));
        model.addAttribute(
                "roles",
                Arrays.stream(Role.values())
                        .map(role -> new ZoneOptions.Option(role.name(), wording.text(role.messageKey())))
                        .toList());
        model.addAttribute("person", person);
        model.addAttribute("waiting", waiting(programme));
        model.addAttribute(
                "lives",
                Arrays.stream(InvitationLife.values())
                        .map(life -> new ZoneOptions.Option(life.name(), wording.text(life.messageKey())))
                        .toList());
        if (!model.containsAttribute("again")) {
            model.addAttribute("again", FormView.empty());
        }
        return "people/people";
    }

    private List<ZoneOptions.Option> waiting(Programme programme) {
        return invitations.waiting(programme.id()).stream()
                .map(one -> new ZoneOptions.Option(
                        one.personId().toString(), wording.text("people.again.line", one.name(), one.username())))
                .toList();
    }

    private List<Holders> holders(Programme programme) {
        return Arrays.stream(Role.values())
                .map(role -> new Holders(
                        wording.text(role.messageKey()),
                        people.holding(programme.id(), role).stream()
                                .map(org.scrubline.people.Person::printedName)
                                .toList()))
                .toList();
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

    private static Attempt<Role> role(String typed) {
        return Arrays.stream(Role.values())
                .filter(role -> role.name().equals(typed))
                .findFirst()
                .<Attempt<Role>>map(Attempt::done)
                .orElseGet(() -> Attempt.refused(Refusal.at("role", "refusal.role")));
    }
}
