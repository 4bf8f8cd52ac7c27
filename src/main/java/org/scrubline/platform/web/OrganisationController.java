package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.security.OrganisationEntry;
import org.scrubline.platform.security.SecondStep;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.security.web.savedrequest.HttpSessionRequestCache;
import org.springframework.security.web.savedrequest.SavedRequest;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Where somebody who belongs to several organisations says which one they enter: after log-in, and whenever they change. */
@Controller
class OrganisationController {

    private static final String AT_LOG_IN = "/login/organisation";
    private static final String LATER = "/account/organisation";

    private final OrganisationEntry organisations;
    private final HttpSessionRequestCache asked = new HttpSessionRequestCache();

    OrganisationController(OrganisationEntry organisations) {
        this.organisations = organisations;
    }

    /** An organisation to enter; {@code here} for the one entered now. */
    record Choice(UUID id, String name, boolean here) {}

    @GetMapping(AT_LOG_IN)
    String atLogIn(HttpServletRequest request, Model model) {
        Optional<SecondStep> step = step(request);
        if (step.isEmpty()) {
            return "redirect:/";
        }
        model.addAttribute("choices", choices(step.get().who().accountId(), null));
        return "platform/organisation-choice";
    }

    /** The page asked for before the log-in comes next. */
    @PostMapping(AT_LOG_IN)
    String enter(
            @RequestParam(defaultValue = "") String organisation,
            HttpServletRequest request,
            HttpServletResponse response) {
        Optional<SecondStep> step = step(request);
        if (step.isEmpty()) {
            return "redirect:/";
        }
        SecondStep shown = step.get();
        organisations.enter(shown.who().accountId(), organisation, shown.shown(), request, response);
        SavedRequest before = asked.getRequest(request, response);
        asked.removeRequest(request, response);
        return "redirect:" + (before == null ? "/" : before.getRedirectUrl());
    }

    @GetMapping(LATER)
    String later(@AuthenticationPrincipal SignedIn who, Authentication authentication, Model model) {
        model.addAttribute("choices", several(who, authentication));
        return "platform/organisation";
    }

    @PostMapping(LATER)
    String change(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String organisation,
            Authentication authentication,
            HttpServletRequest request,
            HttpServletResponse response) {
        several(who, authentication);
        List<String> shown = authentication.getAuthorities().stream()
                .map(GrantedAuthority::getAuthority)
                .filter(name -> name != null && name.startsWith("FACTOR_"))
                .toList();
        organisations.enter(who.accountId(), organisation, shown, request, response);
        return "redirect:/";
    }

    /** For whoever belongs to one organisation, or came through the provider of one, there is nothing to change. */
    private List<Choice> several(SignedIn who, Authentication authentication) {
        if (!organisations.several(who.accountId(), authentication.getAuthorities())) {
            throw new NotFound();
        }
        return choices(who.accountId(), who.tenantId());
    }

    private List<Choice> choices(UUID account, @Nullable UUID here) {
        return organisations.open(account).stream()
                .map(one -> new Choice(
                        one.tenantId(), one.organisationName(), one.tenantId().equals(here)))
                .toList();
    }

    private static Optional<SecondStep> step(HttpServletRequest request) {
        return SecondStep.of(request).filter(one -> one.path().equals(AT_LOG_IN));
    }
}
