package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.platform.provider.Connection;
import org.scrubline.platform.provider.Connections;
import org.scrubline.platform.provider.ProviderFault.Reason;
import org.scrubline.platform.provider.Subjects;
import org.scrubline.platform.security.OtherWaysIn;
import org.scrubline.platform.security.ProviderWish;
import org.scrubline.platform.security.StepUp;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Whether a person's own account is connected with the log-in of their organisation. No page where it has none. */
@Controller
@RequestMapping("/account/provider")
class ProviderController {

    private static final String PATH = "/account/provider";

    private final Connections connections;
    private final Subjects subjects;
    private final OtherWaysIn others;
    private final StepUp stepUp;
    private final Wording wording;
    private final Clock clock;

    ProviderController(
            Connections connections,
            Subjects subjects,
            OtherWaysIn others,
            StepUp stepUp,
            Wording wording,
            Clock clock) {
        this.connections = connections;
        this.subjects = subjects;
        this.others = others;
        this.stepUp = stepUp;
        this.wording = wording;
        this.clock = clock;
    }

    /**
     * The page.
     *
     * @param linkedAt day, or null while it is not connected
     * @param recent whether the person showed who they are just now
     * @param password whether the account has one, without which a passkey alone signs
     * @param said what came of going there, or null
     */
    record Page(
            String label,
            @Nullable String linkedAt,
            boolean recent,
            boolean password,
            @Nullable String said) {}

    @GetMapping
    ModelAndView show(
            @AuthenticationPrincipal SignedIn who,
            Authentication authentication,
            @RequestParam(required = false) @Nullable String provider,
            HttpSession session) {
        String said = Reason.of(provider).map(Reason::word).orElse(null);
        return page(who, stepUp.recent(authentication, session), said, List.of());
    }

    @PostMapping
    ModelAndView connect(@AuthenticationPrincipal SignedIn who, Authentication authentication, HttpSession session) {
        Connection connection = own(who);
        if (!stepUp.recent(authentication, session)) {
            return tooLate(who);
        }
        new ProviderWish.OwnAccount(who.accountId(), clock.instant()).waitIn(session);
        return new ModelAndView("redirect:/login/with/" + connection.name());
    }

    @PostMapping("/remove")
    ModelAndView remove(
            @AuthenticationPrincipal SignedIn who,
            Authentication authentication,
            HttpSession session,
            RedirectAttributes redirect) {
        Connection connection = own(who);
        if (!stepUp.recent(authentication, session)) {
            return tooLate(who);
        }
        if (!others.any(who.accountId())) {
            ModelAndView page = page(who, true, null, List.of(Refusal.of("refusal.provider.only")));
            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return page;
        }
        subjects.unlink(who, connection);
        redirect.addFlashAttribute("flash", wording.text("platform.provider.removed", connection.label()));
        return new ModelAndView("redirect:" + PATH);
    }

    private ModelAndView tooLate(SignedIn who) {
        ModelAndView page = page(who, false, null, List.of(Refusal.of("refusal.step-up")));
        page.setStatus(HttpStatus.FORBIDDEN);
        return page;
    }

    private Connection own(SignedIn who) {
        return connections.of(who.tenantId()).orElseThrow(NotFound::new);
    }

    private ModelAndView page(SignedIn who, boolean recent, @Nullable String said, List<Refusal> reasons) {
        Connection connection = own(who);
        Optional<String> linked = subjects.linkedAt(connection, who.accountId()).map(AccountTimes::at);
        return new ModelAndView(
                "platform/provider",
                Map.of(
                        "page",
                        new Page(
                                connection.label(),
                                linked.orElse(null),
                                recent,
                                others.password(who.accountId()),
                                said),
                        "form",
                        new FormView(Map.of(), wording.errors(reasons))));
    }
}
