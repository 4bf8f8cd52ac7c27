package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Map;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.platform.factor.SecondFactors;
import org.scrubline.platform.passkey.Challenges;
import org.scrubline.platform.security.LogInSession;
import org.scrubline.platform.security.OpenSessions;
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

/** A person's own second factor. There is no address for anybody else's. */
@Controller
@RequestMapping("/account/second-factor")
class SecondFactorController {

    private static final String PATH = "/account/second-factor";

    private final SecondFactors factors;
    private final SecondFactorPages pages;
    private final Accounts accounts;
    private final StepUp stepUp;
    private final LogInSession logIn;
    private final OpenSessions sessions;
    private final Wording wording;

    SecondFactorController(
            SecondFactors factors,
            SecondFactorPages pages,
            Accounts accounts,
            StepUp stepUp,
            LogInSession logIn,
            OpenSessions sessions,
            Wording wording) {
        this.factors = factors;
        this.pages = pages;
        this.accounts = accounts;
        this.stepUp = stepUp;
        this.logIn = logIn;
        this.sessions = sessions;
        this.wording = wording;
    }

    @GetMapping
    ModelAndView page(@AuthenticationPrincipal SignedIn who, Authentication authentication, HttpSession session) {
        return page(who, stepUp.recent(authentication, session), session, List.of());
    }

    /** A password or passkey shown anew, before a factor is added. */
    @PostMapping("/confirm")
    ModelAndView confirm(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(defaultValue = "") String assertion,
            HttpSession session) {
        byte[] challenge = Challenges.CONFIRM.take(session);
        return accounts.confirm(who.accountId(), Credential.of(password, assertion), challenge)
                .fold(
                        shown -> {
                            stepUp.shown(session);
                            return new ModelAndView("redirect:" + PATH);
                        },
                        reasons -> refused(page(who, false, session, at("password", reasons))));
    }

    /** The app's first code adds it. The other sessions end: whoever has the password alone is out from now on. */
    @PostMapping
    ModelAndView add(
            @AuthenticationPrincipal SignedIn who,
            Authentication authentication,
            @RequestParam(defaultValue = "") String code,
            HttpServletRequest request,
            HttpServletResponse response) {
        HttpSession session = request.getSession();
        if (!stepUp.recent(authentication, session)) {
            ModelAndView page = page(who, false, session, List.of(Refusal.at("password", "refusal.step-up")));
            page.setStatus(HttpStatus.FORBIDDEN);
            return page;
        }
        return factors.add(who, SecondFactorPages.waiting(session), code)
                .fold(
                        codes -> {
                            SecondFactorPages.forget(session);
                            // In this order: the stored session keeps its old name until the answer is out.
                            sessions.endOthers(who.username(), session.getId());
                            logIn.codeShown(who, request, response);
                            return codes(codes);
                        },
                        reasons -> refused(page(who, true, session, reasons)));
    }

    @PostMapping("/remove")
    ModelAndView remove(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String code,
            HttpSession session,
            RedirectAttributes redirect) {
        return factors.remove(who, code)
                .fold(
                        removed -> {
                            sessions.endOthers(who.username(), session.getId());
                            redirect.addFlashAttribute("flash", wording.text("platform.factor.removed"));
                            return new ModelAndView("redirect:" + PATH);
                        },
                        reasons -> refused(page(who, true, session, reasons)));
    }

    @PostMapping("/recovery")
    ModelAndView recovery(
            @AuthenticationPrincipal SignedIn who, @RequestParam(defaultValue = "") String code, HttpSession session) {
        return factors.renewRecoveryCodes(who, code)
                .fold(this::codes, reasons -> refused(page(who, true, session, reasons)));
    }

    /** Shown in the answer itself and kept nowhere: reloading the page does not bring them back. */
    private ModelAndView codes(List<String> codes) {
        return new ModelAndView("platform/recovery-codes", Map.of("codes", codes));
    }

    private ModelAndView page(SignedIn who, boolean recent, HttpSession session, List<Refusal> reasons) {
        return new ModelAndView(
                "platform/second-factor",
                Map.of(
                        "page",
                        pages.of(who, recent, session),
                        "form",
                        new FormView(Map.of(), wording.errors(reasons))));
    }

    private static ModelAndView refused(ModelAndView page) {
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private static List<Refusal> at(String field, List<Refusal> reasons) {
        return reasons.stream()
                .map(reason -> new Refusal(field, reason.messageKey(), reason.arguments()))
                .toList();
    }
}
