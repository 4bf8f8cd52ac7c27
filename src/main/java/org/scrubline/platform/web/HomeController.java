package org.scrubline.platform.web;

import java.util.List;
import org.scrubline.platform.NavItem;
import org.scrubline.platform.SignedIn;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** Sends each person to the first page of their own work. */
@Controller
class HomeController {

    private final ShellAdvice shell;

    HomeController(ShellAdvice shell) {
        this.shell = shell;
    }

    @GetMapping("/")
    String home(@AuthenticationPrincipal SignedIn who) {
        List<NavItem> navigation = shell.navigation(who);
        return navigation.isEmpty()
                ? "platform/nothing-shared"
                : "redirect:" + navigation.get(0).href();
    }

    @GetMapping("/login")
    String login() {
        return "platform/login";
    }
}
