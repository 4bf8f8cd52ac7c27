package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.util.UUID;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.factor.SecondFactors;
import org.scrubline.platform.passkey.Challenges;
import org.scrubline.platform.security.SecondStep;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** Asks for the second factor after a right password. Whoever has shown none, or both, is led on. */
@Controller
class SecondStepController {

    private static final String PATH = "/login/code";

    private final SecondFactors factors;
    private final Passkeys passkeys;

    SecondStepController(SecondFactors factors, Passkeys passkeys) {
        this.factors = factors;
        this.passkeys = passkeys;
    }

    @GetMapping(PATH)
    String page(HttpServletRequest request, HttpSession session, Model model) {
        SecondStep step =
                SecondStep.of(request).filter(one -> one.path().equals(PATH)).orElse(null);
        if (step == null) {
            return "redirect:/";
        }
        UUID account = step.who().accountId();
        model.addAttribute("app", factors.app(account).isPresent());
        model.addAttribute(
                "ask", passkeys.ask(account, Challenges.LOG_IN.current(session)).orElse(null));
        return "platform/login-code";
    }
}
