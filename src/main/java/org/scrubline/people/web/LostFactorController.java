package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.people.LostFactors;
import org.scrubline.platform.FormView;
import org.scrubline.platform.FreshLogIn;
import org.scrubline.platform.Refusal;
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

/** Where two administrators take a lost second factor away. */
@Controller
@RequestMapping(LostFactorController.PATH)
class LostFactorController {

    static final String PATH = "/people/lost-factors";

    private final LostFactors lost;
    private final FreshLogIn fresh;
    private final Wording wording;

    LostFactorController(LostFactors lost, FreshLogIn fresh, Wording wording) {
        this.lost = lost;
        this.fresh = fresh;
        this.wording = wording;
    }

    /** A request that waits; {@code own} when the reader asked it and so cannot confirm it. */
    record Line(UUID id, String name, String by, String reason, boolean own) {}

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, HttpSession session, Model model) {
        return show(who, session, model, FormView.empty());
    }

    @PostMapping
    String ask(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String person,
            @RequestParam(defaultValue = "") String reason,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormView typed = new FormView(Map.of("person", person, "reason", reason), List.of());
        UUID chosen = lost.owners(who).stream()
                .map(LostFactors.Owner::personId)
                .filter(id -> id.toString().equals(person))
                .findFirst()
                .orElse(null);
        if (chosen == null) {
            return refused(
                    who, session, model, response, typed, List.of(Refusal.at("person", "refusal.factor.person")));
        }
        if (!fresh.fresh(session)) {
            return refused(who, session, model, response, typed, List.of(Refusal.of("refusal.step-up")));
        }
        return lost.ask(who, chosen, reason)
                .fold(
                        id -> {
                            redirect.addFlashAttribute("flash", wording.text("people.lost.asked"));
                            return "redirect:" + PATH;
                        },
                        reasons -> refused(who, session, model, response, typed, reasons));
    }

    @PostMapping("/{id}/confirm")
    String confirm(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        if (!fresh.fresh(session)) {
            return refused(who, session, model, response, FormView.empty(), List.of(Refusal.of("refusal.step-up")));
        }
        return lost.confirm(who, id)
                .fold(
                        name -> {
                            redirect.addFlashAttribute("flash", wording.text("people.lost.done", name));
                            return "redirect:" + PATH;
                        },
                        reasons -> refused(who, session, model, response, FormView.empty(), reasons));
    }

    @PostMapping("/{id}/drop")
    String drop(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        lost.drop(who, id);
        redirect.addFlashAttribute("flash", wording.text("people.lost.dropped"));
        return "redirect:" + PATH;
    }

    private String refused(
            SignedIn who,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            FormView typed,
            List<Refusal> reasons) {
        response.setStatus(422);
        return show(who, session, model, new FormView(typed.values(), wording.errors(reasons)));
    }

    private String show(SignedIn who, HttpSession session, Model model, FormView form) {
        model.addAttribute(
                "owners",
                lost.owners(who).stream()
                        .map(owner -> new ZoneOptions.Option(owner.personId().toString(), owner.name()))
                        .toList());
        model.addAttribute(
                "waiting",
                lost.waiting(who).stream()
                        .map(asked -> new Line(
                                asked.id(),
                                asked.name(),
                                asked.askedByName(),
                                asked.reason(),
                                asked.askedBy().equals(who.personId())))
                        .toList());
        model.addAttribute("recent", fresh.fresh(session));
        model.addAttribute("form", form);
        return "people/lost-factors";
    }
}
