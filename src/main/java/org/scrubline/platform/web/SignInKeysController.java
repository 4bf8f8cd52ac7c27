package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.platform.passkey.Challenges;
import org.scrubline.platform.passkey.OwnPasskeys;
import org.scrubline.platform.security.OpenSessions;
import org.scrubline.platform.security.StepUp;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A person's own passkeys. There is no address for anybody else's. */
@Controller
@RequestMapping("/account/keys")
class SignInKeysController {

    private static final String PATH = "/account/keys";

    private final OwnPasskeys passkeys;
    private final OpenSessions sessions;
    private final Accounts accounts;
    private final StepUp stepUp;
    private final SignInKeysPages pages;
    private final Wording wording;

    SignInKeysController(
            OwnPasskeys passkeys,
            OpenSessions sessions,
            Accounts accounts,
            StepUp stepUp,
            SignInKeysPages pages,
            Wording wording) {
        this.sessions = sessions;
        this.passkeys = passkeys;
        this.accounts = accounts;
        this.stepUp = stepUp;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    ModelAndView keys(
            @AuthenticationPrincipal SignedIn who,
            Authentication authentication,
            HttpSession session,
            @RequestParam(defaultValue = "") String label) {
        return page(who, stepUp.recent(authentication, session), session, typed(label, List.of()));
    }

    /** A password or passkey shown anew; the name typed meanwhile is kept. */
    @PostMapping("/confirm")
    ModelAndView confirm(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(defaultValue = "") String assertion,
            @RequestParam(defaultValue = "") String label,
            HttpSession session) {
        byte[] challenge = Challenges.CONFIRM.take(session);
        return accounts.confirm(who.accountId(), Credential.of(password, assertion), challenge)
                .fold(
                        shown -> {
                            stepUp.shown(session);
                            return new ModelAndView(
                                    "redirect:" + PATH, label.isBlank() ? Map.of() : Map.of("label", label));
                        },
                        reasons -> refused(page(who, false, session, typed(label, at("password", reasons)))));
    }

    @PostMapping
    ModelAndView add(
            @AuthenticationPrincipal SignedIn who,
            Authentication authentication,
            @RequestParam(defaultValue = "") String label,
            @RequestParam(defaultValue = "") String attestation,
            HttpSession session,
            RedirectAttributes redirect) {
        if (!stepUp.recent(authentication, session)) {
            return tooLate(who, session, label);
        }
        return passkeys.add(who, label, attestation, Challenges.REGISTER.take(session))
                .fold(
                        key -> {
                            redirect.addFlashAttribute("flash", wording.text("platform.keys.added", key.label()));
                            return new ModelAndView("redirect:" + PATH);
                        },
                        reasons -> refused(page(who, true, session, typed(label, at("label", reasons)))));
    }

    @GetMapping("/{id}/remove")
    ModelAndView askBeforeRemoving(
            @AuthenticationPrincipal SignedIn who,
            Authentication authentication,
            @PathVariable UUID id,
            HttpSession session) {
        Passkeys.Passkey key = pages.own(who, id);
        return stepUp.recent(authentication, session)
                ? new ModelAndView("platform/sign-in-key-remove", Map.of("key", key))
                : new ModelAndView("redirect:" + PATH);
    }

    @PostMapping("/{id}/remove")
    ModelAndView remove(
            @AuthenticationPrincipal SignedIn who,
            Authentication authentication,
            @PathVariable UUID id,
            HttpSession session,
            RedirectAttributes redirect) {
        Passkeys.Passkey key = pages.own(who, id);
        if (!stepUp.recent(authentication, session)) {
            return tooLate(who, session, "");
        }
        passkeys.remove(who, key);
        sessions.endOthers(who.username(), session.getId());
        redirect.addFlashAttribute("flash", wording.text("platform.keys.removed", key.label()));
        return new ModelAndView("redirect:" + PATH);
    }

    private ModelAndView tooLate(SignedIn who, HttpSession session, String label) {
        List<Refusal> reasons = List.of(Refusal.at("password", "refusal.step-up"));
        ModelAndView page = page(who, false, session, typed(label, reasons));
        page.setStatus(HttpStatus.FORBIDDEN);
        return page;
    }

    private ModelAndView page(SignedIn who, boolean recent, HttpSession session, FormView form) {
        return new ModelAndView("platform/sign-in-keys", Map.of("page", pages.of(who, recent, session), "form", form));
    }

    private static ModelAndView refused(ModelAndView page) {
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private FormView typed(String label, List<Refusal> reasons) {
        return new FormView(Map.of("label", label), wording.errors(reasons));
    }

    /** What is wrong with a passkey is said at the field beside its button. */
    private static List<Refusal> at(String field, List<Refusal> reasons) {
        return reasons.stream()
                .map(reason -> new Refusal(field, reason.messageKey(), reason.arguments()))
                .toList();
    }
}
