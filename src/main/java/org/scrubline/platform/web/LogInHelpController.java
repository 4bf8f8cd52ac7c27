package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Wording;
import org.scrubline.platform.provider.Connections;
import org.scrubline.platform.security.NewPassword;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** For whoever cannot get in: asks for a code by mail. The answer is the same whether or not anybody has that name. */
@Controller
@RequestMapping("/login/help")
class LogInHelpController {

    private static final int LONGEST = 254;

    private final NewPassword newPassword;
    private final Connections connections;
    private final Wording wording;

    LogInHelpController(NewPassword newPassword, Connections connections, Wording wording) {
        this.newPassword = newPassword;
        this.connections = connections;
        this.wording = wording;
    }

    @GetMapping
    ModelAndView form() {
        return page(List.of());
    }

    @PostMapping
    @Nullable
    ModelAndView ask(
            @RequestParam(defaultValue = "") String name, HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        Optional<Refusal> unreadable = unreadable(FreeText.tidy(name));
        if (unreadable.isPresent()) {
            ModelAndView page = page(List.of(unreadable.get()));
            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return page;
        }
        if (!newPassword.isOffered()) {
            return new ModelAndView("redirect:/login/help");
        }
        Optional<Duration> wait = newPassword.ask(name, request);
        if (wait.isPresent()) {
            response.setHeader(
                    HttpHeaders.RETRY_AFTER, String.valueOf(wait.get().toSeconds() + 1));
            response.sendError(HttpStatus.TOO_MANY_REQUESTS.value());
            return null;
        }
        return new ModelAndView("redirect:/login/new-password?asked");
    }

    private static Optional<Refusal> unreadable(String name) {
        return name.isEmpty()
                ? Optional.of(Refusal.at("name", "refusal.help.empty"))
                : FreeText.check("name", name, LONGEST);
    }

    private ModelAndView page(List<Refusal> reasons) {
        return new ModelAndView(
                "platform/login-help",
                Map.of(
                        "offered",
                        newPassword.isOffered(),
                        "connections",
                        connections.all(),
                        "form",
                        new FormView(Map.of(), wording.errors(reasons))));
    }
}
