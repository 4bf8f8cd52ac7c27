package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.Map;
import org.scrubline.platform.FormView;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.platform.security.OpenSessions;
import org.scrubline.platform.security.OwnPassword;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A person's own password. */
@Controller
@RequestMapping("/account/password")
class PasswordController {

    private final OwnPassword password;
    private final OpenSessions sessions;
    private final Wording wording;

    PasswordController(OwnPassword password, OpenSessions sessions, Wording wording) {
        this.password = password;
        this.sessions = sessions;
        this.wording = wording;
    }

    @GetMapping
    String page(Model model) {
        model.addAttribute("form", FormView.empty());
        return "platform/password";
    }

    /** Whoever knew the old password is out: the other sessions end. */
    @PostMapping
    String change(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model,
            RedirectAttributes redirect) {
        HttpSession session = request.getSession();
        return password.change(who, typed.getOrDefault("current", ""), typed.getOrDefault("password", ""), request)
                .fold(
                        done -> {
                            sessions.endOthers(who.username(), session.getId());
                            redirect.addFlashAttribute("flash", wording.text("platform.password.changed"));
                            return "redirect:/account/sessions";
                        },
                        reasons -> {
                            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
                            model.addAttribute("form", new FormView(Map.of(), wording.errors(reasons)));
                            return "platform/password";
                        });
    }
}
