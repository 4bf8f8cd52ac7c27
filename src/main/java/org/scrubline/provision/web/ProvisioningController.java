package org.scrubline.provision.web;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.Invitations;
import org.scrubline.people.People;
import org.scrubline.platform.FormView;
import org.scrubline.platform.FreshLogIn;
import org.scrubline.platform.InvitationLife;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.provision.ProvisionTokens;
import org.scrubline.provision.ProvisionedUser;
import org.scrubline.provision.Provisioning;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The administrator's page of the directory: its tokens, and whom it brought who have no role yet. */
@Controller
@RequestMapping(ProvisioningController.PATH)
class ProvisioningController {

    static final String PATH = "/people/provisioning";

    private final ProvisionTokens tokens;
    private final Provisioning provisioning;
    private final People people;
    private final Invitations invitations;
    private final FreshLogIn fresh;
    private final ProvisioningPages pages;
    private final Wording wording;

    ProvisioningController(
            ProvisionTokens tokens,
            Provisioning provisioning,
            People people,
            Invitations invitations,
            FreshLogIn fresh,
            ProvisioningPages pages,
            Wording wording) {
        this.tokens = tokens;
        this.provisioning = provisioning;
        this.people = people;
        this.invitations = invitations;
        this.fresh = fresh;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, HttpSession session, Model model) {
        administered(who);
        return show(who, session, model, FormView.empty());
    }

    /** The token is shown in the answer itself and kept nowhere. */
    @PostMapping("/tokens")
    String make(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String label,
            HttpSession session,
            Model model,
            HttpServletResponse response) {
        administered(who);
        if (!fresh.fresh(session)) {
            return tooLate(who, session, model, response);
        }
        return tokens.make(label)
                .fold(
                        token -> {
                            model.addAttribute("token", token);
                            return show(who, session, model, FormView.empty());
                        },
                        reasons -> {
                            response.setStatus(422);
                            return show(
                                    who, session, model, new FormView(Map.of("label", label), wording.errors(reasons)));
                        });
    }

    @PostMapping("/tokens/{id}/revoke")
    String revoke(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        administered(who);
        redirect.addFlashAttribute("flash", wording.text("provision.token.revoked", tokens.revoke(id)));
        return "redirect:" + PATH;
    }

    /**
     * Gives somebody the directory brought a first role in the administrator's programme, and an invitation unless they came
     * in already.
     */
    @PostMapping("/persons/{id}/role")
    String giveRole(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String role,
            @RequestParam(defaultValue = "") String life,
            HttpSession session,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        UUID programme = administered(who);
        ProvisionedUser user = provisioning.withoutRole().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow(NotFound::new);
        Optional<Role> given = Arrays.stream(Role.values())
                .filter(one -> one.name().equals(role))
                .findFirst();
        if (given.isEmpty()) {
            response.setStatus(422);
            return show(who, session, model, refused(Refusal.of("refusal.role")));
        }
        return InvitationLife.chosen(life)
                .fold(
                        time -> {
                            people.grant(programme, user.id(), given.get());
                            redirect.addFlashAttribute(
                                    "flash", wording.text("provision.role.given", user.printedName()));
                            invitations
                                    .make(programme, user.id(), time)
                                    .fold(made -> handOver(made, redirect), reasons -> redirect);
                            return "redirect:" + PATH;
                        },
                        reasons -> {
                            response.setStatus(422);
                            return show(who, session, model, refused(reasons.get(0)));
                        });
    }

    private RedirectAttributes handOver(Invitations.Made made, RedirectAttributes redirect) {
        return redirect.addFlashAttribute("invited", made.username())
                .addFlashAttribute("code", made.code())
                .addFlashAttribute("life", wording.text(made.life().messageKey()));
    }

    private String tooLate(SignedIn who, HttpSession session, Model model, HttpServletResponse response) {
        response.setStatus(403);
        return show(who, session, model, refused(Refusal.of("refusal.step-up")));
    }

    private FormView refused(Refusal reason) {
        return new FormView(Map.of(), wording.errors(List.of(reason)));
    }

    private String show(SignedIn who, HttpSession session, Model model, FormView form) {
        model.addAttribute("page", pages.of(who, fresh.fresh(session)));
        model.addAttribute("form", form);
        return "provision/provisioning";
    }

    /** The first programme the person administers; for anyone else this page does not exist. */
    private static UUID administered(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> grant.role() == Role.ADMINISTRATOR)
                .map(SignedIn.Grant::programmeId)
                .min(UUID::compareTo)
                .orElseThrow(NotFound::new);
    }
}
