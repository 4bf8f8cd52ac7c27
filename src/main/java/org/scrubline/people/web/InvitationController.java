package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Where a new person turns the code from the administrator into a password. */
@Controller
@RequestMapping("/welcome")
class InvitationController {

    private final Accounts accounts;
    private final Wording wording;

    InvitationController(Accounts accounts, Wording wording) {
        this.accounts = accounts;
        this.wording = wording;
    }

    @GetMapping
    String form(Model model) {
        model.addAttribute("form", FormView.empty());
        return "people/welcome";
    }

    @PostMapping
    String accept(
            @RequestParam(defaultValue = "") String code,
            @RequestParam(defaultValue = "") String password,
            Model model,
            HttpServletResponse response) {
        return accounts.acceptInvitation(code, password).fold(account -> "redirect:/login?ready", reasons -> {
            response.setStatus(422);
            model.addAttribute("form", new FormView(Map.of("code", code), wording.errors(reasons)));
            return "people/welcome";
        });
    }
}
