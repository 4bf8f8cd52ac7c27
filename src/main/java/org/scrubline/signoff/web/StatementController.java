package org.scrubline.signoff.web;

import java.util.regex.Pattern;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.signoff.SigningStatements;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Accepting what a signature means, once, before the first one. */
@Controller
class StatementController {

    /** Pages that ask for it; anything else leads home, so that nobody is led astray by a link. */
    private static final Pattern BACK =
            Pattern.compile("/(?:sheets/[0-9a-f-]{36}/review|signed/[0-9a-f-]{36}|late-releases/[0-9a-f-]{36}"
                    + "|meetings/[0-9a-f-]{36}/trainees/[0-9a-f-]{36}/decision/review"
                    + "|decisions/[0-9a-f-]{36}(?:/[a-z-]+)?|entitlements(?:/[A-Za-z0-9_-]+){4})");

    private final SigningStatements statements;
    private final Wording wording;

    StatementController(SigningStatements statements, Wording wording) {
        this.statements = statements;
        this.wording = wording;
    }

    @PostMapping("/signing-statement")
    String accept(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String back,
            RedirectAttributes redirect) {
        statements.accept(who);
        redirect.addFlashAttribute("flash", wording.text("signoff.statement.done"));
        return "redirect:" + (BACK.matcher(back).matches() ? back : "/");
    }
}
