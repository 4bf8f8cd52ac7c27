package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.time.Clock;
import java.util.List;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.provider.Connection;
import org.scrubline.platform.provider.Connections;
import org.scrubline.platform.security.ProviderWish;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Where an invited person takes the log-in of their organisation instead of a password. No page where there is none. */
@Controller
@RequestMapping("/welcome/provider")
class ProviderWelcomeController {

    private final Connections connections;
    private final Clock clock;

    ProviderWelcomeController(Connections connections, Clock clock) {
        this.connections = connections;
        this.clock = clock;
    }

    @GetMapping
    String form(Model model) {
        List<Connection> all = connections.all();
        if (all.isEmpty()) {
            throw new NotFound();
        }
        model.addAttribute("connections", all);
        return "platform/provider-welcome";
    }

    /** The code is looked at when the person comes back, so that it tells nobody anything before. */
    @PostMapping
    String go(
            @RequestParam(defaultValue = "") String code,
            @RequestParam(defaultValue = "") String with,
            HttpSession session) {
        Connection connection = connections.named(with).orElseThrow(NotFound::new);
        new ProviderWish.Invited(SecretCode.hash(code), clock.instant()).waitIn(session);
        return "redirect:/login/with/" + connection.name();
    }
}
