package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.passkey.Challenges;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** Sends each person to the first page of their own work. */
@Controller
class HomeController {

    private final ShellAdvice shell;
    private final Passkeys passkeys;

    HomeController(ShellAdvice shell, Passkeys passkeys) {
        this.shell = shell;
        this.passkeys = passkeys;
    }

    @GetMapping("/")
    String home(@AuthenticationPrincipal SignedIn who) {
        List<NavItem> navigation = shell.navigation(who);
        return navigation.isEmpty()
                ? "platform/nothing-shared"
                : "redirect:" + navigation.get(0).href();
    }

    @GetMapping("/login")
    String login(HttpSession session, Model model) {
        model.addAttribute("ask", passkeys.askAnyone(Challenges.LOG_IN.current(session)));
        return "platform/login";
    }
}
