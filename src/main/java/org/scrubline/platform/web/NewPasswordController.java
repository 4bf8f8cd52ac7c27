package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Wording;
import org.scrubline.platform.security.NewPassword;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Where a code from a mail becomes a new password. The address in the mail carries the code behind a {@code #}, which a
 * browser never sends: it reaches no log and no other site. Reading the page changes nothing, so programs that look at mail
 * use nothing up.
 */
@Controller
@RequestMapping("/login/new-password")
class NewPasswordController {

    private final NewPassword newPassword;
    private final Wording wording;

    NewPasswordController(NewPassword newPassword, Wording wording) {
        this.newPassword = newPassword;
        this.wording = wording;
    }

    @GetMapping
    String form(Model model) {
        model.addAttribute("form", FormView.empty());
        return "platform/new-password";
    }

    @PostMapping
    String choose(
            @RequestParam(defaultValue = "") String code,
            @RequestParam(defaultValue = "") String password,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model) {
        return newPassword.choose(code, password, request).fold(owner -> "redirect:/login?ready", reasons -> {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("form", new FormView(Map.of("code", code), wording.errors(reasons)));
            return "platform/new-password";
        });
    }
}
