package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.passkey.Challenges;
import org.scrubline.platform.provider.Connections;
import org.scrubline.platform.provider.ProviderFault;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Sends each person to the first page of their own work. */
@Controller
class HomeController {

    private final ShellAdvice shell;
    private final Passkeys passkeys;
    private final Connections connections;

    HomeController(ShellAdvice shell, Passkeys passkeys, Connections connections) {
        this.connections = connections;
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
    String login(@RequestParam(required = false) @Nullable String provider, HttpSession session, Model model) {
        model.addAttribute("connections", connections.all());
        model.addAttribute(
                "said",
                ProviderFault.Reason.of(provider)
                        .map(ProviderFault.Reason::word)
                        .orElse(null));
        model.addAttribute("ask", passkeys.askAnyone(Challenges.LOG_IN.current(session)));
        return "platform/login";
    }
}
