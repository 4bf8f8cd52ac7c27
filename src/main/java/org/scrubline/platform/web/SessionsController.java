package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Device;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.platform.security.Devices;
import org.scrubline.platform.security.OpenSessions;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A person's own sessions, and log-ins from new kinds of device. There is no address for anybody else's. */
@Controller
@RequestMapping("/account/sessions")
class SessionsController {

    private static final String BACK = "redirect:/account/sessions";

    private final OpenSessions sessions;
    private final Devices devices;
    private final Wording wording;

    SessionsController(OpenSessions sessions, Devices devices, Wording wording) {
        this.sessions = sessions;
        this.devices = devices;
        this.wording = wording;
    }

    /** One session; {@code end} is the address that ends it, null for the one that asks. */
    record Line(
            String device,
            @Nullable String address,
            String opened,
            String used,
            @Nullable String end) {}

    /** A log-in to call one's own or not. */
    record Unknown(String device, String at, String address) {}

    @GetMapping
    String page(@AuthenticationPrincipal SignedIn who, HttpServletRequest request, HttpSession session, Model model) {
        List<OpenSessions.Open> open = sessions.of(who.username(), session.getId());
        model.addAttribute("sessions", open.stream().map(this::line).toList());
        model.addAttribute("others", open.stream().anyMatch(one -> !one.here()));
        model.addAttribute(
                "unknown",
                devices.unknown(who, request).stream()
                        .map(one -> new Unknown(named(one.device()), AccountTimes.at(one.firstAt()), one.address()))
                        .toList());
        return "platform/sessions";
    }

    private Line line(OpenSessions.Open open) {
        return new Line(
                named(open.device()),
                open.address(),
                AccountTimes.at(open.openedAt()),
                AccountTimes.at(open.lastUsedAt()),
                open.here() ? null : "/account/sessions/" + open.handle() + "/end");
    }

    private String named(Device device) {
        return wording.text(
                "device.both",
                wording.text("device.browser." + device.browser()),
                wording.text("device.system." + device.system()));
    }

    @PostMapping("/{handle}/end")
    String end(@AuthenticationPrincipal SignedIn who, @PathVariable String handle, RedirectAttributes redirect) {
        sessions.end(who.username(), handle);
        return said(redirect, "platform.sessions.ended");
    }

    @PostMapping("/others/end")
    String endOthers(@AuthenticationPrincipal SignedIn who, HttpSession session, RedirectAttributes redirect) {
        sessions.endOthers(who.username(), session.getId());
        return said(redirect, "platform.sessions.others.ended");
    }

    @PostMapping("/mine")
    String mine(@AuthenticationPrincipal SignedIn who, HttpServletRequest request, RedirectAttributes redirect) {
        devices.mine(who, request);
        return said(redirect, "platform.sessions.mine.done");
    }

    /** Ends every other session; what else to do is said on the page it leads to. */
    @PostMapping("/not-mine")
    String notMine(
            @AuthenticationPrincipal SignedIn who,
            HttpServletRequest request,
            HttpSession session,
            RedirectAttributes redirect) {
        sessions.endOthers(who.username(), session.getId());
        devices.notMine(who, request);
        redirect.addFlashAttribute("flash", wording.text("platform.sessions.not-mine.done"));
        return "redirect:/account/password";
    }

    private String said(RedirectAttributes redirect, String key) {
        redirect.addFlashAttribute("flash", wording.text(key));
        return BACK;
    }
}
