package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.platform.security.AddressOnFile;
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

/** A person's own address for mail about the account. No page where no mail can be sent. */
@Controller
@RequestMapping("/account/address")
class AddressController {

    private static final String PATH = "/account/address";

    private final AddressOnFile addresses;
    private final StepUp stepUp;
    private final Wording wording;

    AddressController(AddressOnFile addresses, StepUp stepUp, Wording wording) {
        this.addresses = addresses;
        this.stepUp = stepUp;
        this.wording = wording;
    }

    /** The address that serves and the one that waits for its code; {@code recent}: who it is was shown just now. */
    record Page(@Nullable String serving, @Nullable String waiting, boolean recent) {}

    @GetMapping
    ModelAndView show(@AuthenticationPrincipal SignedIn who, Authentication authentication, HttpSession session) {
        return page(who, stepUp.recent(authentication, session), Map.of(), List.of());
    }

    @PostMapping
    ModelAndView ask(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String address,
            HttpSession session,
            RedirectAttributes redirect) {
        return change(
                who,
                session,
                Map.of("address", address),
                () -> addresses
                        .ask(who, address)
                        .fold(asked -> done(redirect, "platform.address.asked", asked), Attempt::refused));
    }

    @PostMapping("/confirm")
    ModelAndView confirm(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String code,
            HttpSession session,
            RedirectAttributes redirect) {
        return change(
                who,
                session,
                Map.of("code", code),
                () -> addresses
                        .confirm(who, code)
                        .fold(account -> done(redirect, "platform.address.confirmed"), Attempt::refused));
    }

    @PostMapping("/remove")
    ModelAndView remove(@AuthenticationPrincipal SignedIn who, HttpSession session, RedirectAttributes redirect) {
        return change(who, session, Map.of(), () -> {
            addresses.remove(who);
            return done(redirect, "platform.address.removed");
        });
    }

    private Attempt<ModelAndView> done(RedirectAttributes redirect, String key, Object... arguments) {
        redirect.addFlashAttribute("flash", wording.text(key, arguments));
        return Attempt.done(new ModelAndView("redirect:" + PATH));
    }

    /** Whoever sits down at a computer somebody left must not point the mail about the account elsewhere. */
    private ModelAndView change(
            SignedIn who, HttpSession session, Map<String, String> typed, Supplier<Attempt<ModelAndView>> deed) {
        requireMail();
        if (!stepUp.fresh(session)) {
            ModelAndView page = page(who, false, typed, List.of(Refusal.of("refusal.step-up")));
            page.setStatus(HttpStatus.FORBIDDEN);
            return page;
        }
        return deed.get().fold(done -> done, reasons -> {
            ModelAndView page = page(who, true, typed, reasons);
            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return page;
        });
    }

    private ModelAndView page(SignedIn who, boolean recent, Map<String, String> typed, List<Refusal> reasons) {
        requireMail();
        Page page = new Page(
                addresses.serving(who.accountId()).orElse(null),
                addresses.waiting(who.accountId()).orElse(null),
                recent);
        return new ModelAndView(
                "platform/address", Map.of("page", page, "form", new FormView(typed, wording.errors(reasons))));
    }

    private void requireMail() {
        if (!addresses.isOffered()) {
            throw new NotFound();
        }
    }
}
