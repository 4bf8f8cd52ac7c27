package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.scrubline.platform.Device;
import org.scrubline.platform.NewDevice;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/** Notices log-ins from kinds of device an account was never logged in to from. */
@Service
@Transactional
public class Devices {

    private final DeviceStore store;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Devices(DeviceStore store, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.events = events;
        this.clock = clock;
    }

    /** A log-in its owner has not called their own. */
    public record Unknown(Device device, Instant firstAt, String address) {}

    /** Notes what this request, which logged somebody in just now, came from. */
    public void entered(SignedIn who) {
        if (RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes) {
            entered(who, attributes.getRequest());
        }
    }

    private void entered(SignedIn who, HttpServletRequest request) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Device device = of(request);
        String address = request.getRemoteAddr();
        if (store.seen(who.accountId(), device, address, now)) {
            events.publishEvent(new NewDevice(who, device));
        }
    }

    /** Never about the kind of device that asks: who came in with a stolen password must not be the one to confirm it. */
    @Transactional(readOnly = true)
    public List<Unknown> unknown(SignedIn who, HttpServletRequest request) {
        return store.unknown(who.accountId(), of(request)).stream()
                .map(seen -> new Unknown(seen.device(), seen.firstAt(), seen.lastAddress()))
                .toList();
    }

    /** Its owner says that these log-ins were their own. */
    public void mine(SignedIn who, HttpServletRequest request) {
        store.known(who.accountId(), of(request));
    }

    /** Its owner says that they were not; the next one from there is told again. */
    public void notMine(SignedIn who, HttpServletRequest request) {
        store.forget(who.accountId(), of(request));
    }

    /** After a new password each log-in from elsewhere is told once more. */
    void passwordChanged(SignedIn who, HttpServletRequest request) {
        store.forgetOthers(who.accountId(), of(request));
    }

    private static Device of(HttpServletRequest request) {
        return Device.of(request.getHeader(HttpHeaders.USER_AGENT));
    }
}
