package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Map;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.platform.security.OrganisationEntry;
import org.scrubline.platform.security.OwnInvitation;
import org.scrubline.platform.security.StepUp;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Where somebody who is logged in takes up the invitation of another organisation with the log-in they have. */
@Controller
@RequestMapping("/account/invitation")
class OwnInvitationController {

    private final OwnInvitation invitation;
    private final StepUp stepUp;
    private final Wording wording;

    OwnInvitationController(OwnInvitation invitation, StepUp stepUp, Wording wording) {
        this.invitation = invitation;
        this.stepUp = stepUp;
        this.wording = wording;
    }

    @GetMapping
    ModelAndView form(@AuthenticationPrincipal SignedIn who, Authentication authentication, HttpSession session) {
        return page(who, authentication, session, FormView.empty());
    }

    /** Only for whoever showed a password or passkey just now: an open page of somebody else must join nothing. */
    @PostMapping
    ModelAndView takeUp(
            @AuthenticationPrincipal SignedIn who,
            Authentication authentication,
            HttpSession session,
            @RequestParam(defaultValue = "") String code,
            RedirectAttributes redirect) {
        if (!stepUp.recent(authentication, session) || OrganisationEntry.vouched(authentication.getAuthorities())) {
            ModelAndView page =
                    page(who, authentication, session, typed(code, List.of(Refusal.at("code", "refusal.step-up"))));
            page.setStatus(HttpStatus.FORBIDDEN);
            return page;
        }
        return invitation
                .takeUp(who, code)
                .fold(
                        there -> {
                            redirect.addFlashAttribute(
                                    "flash", wording.text("platform.invitation.done", there.organisationName()));
                            return new ModelAndView("redirect:/account/organisation");
                        },
                        reasons -> {
                            ModelAndView page = page(who, authentication, session, typed(code, reasons));
                            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                            return page;
                        });
    }

    private FormView typed(String code, List<Refusal> reasons) {
        return new FormView(Map.of("code", code), wording.errors(reasons));
    }

    private ModelAndView page(SignedIn who, Authentication authentication, HttpSession session, FormView form) {
        return new ModelAndView(
                "platform/own-invitation",
                Map.of(
                        "username",
                        who.username(),
                        "vouched",
                        OrganisationEntry.vouched(authentication.getAuthorities()),
                        "recent",
                        stepUp.recent(authentication, session),
                        "form",
                        form));
    }
}
