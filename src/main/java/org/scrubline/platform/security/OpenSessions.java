package org.scrubline.platform.security;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Device;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SecretCode;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;
import org.springframework.stereotype.Component;

/** The sessions people are logged in with. What is ended here is over at the next request, on every server. */
@Component
public class OpenSessions {

    private final FindByIndexNameSessionRepository<? extends Session> sessions;

    OpenSessions(FindByIndexNameSessionRepository<? extends Session> sessions) {
        this.sessions = sessions;
    }

    /**
     * One session.
     *
     * @param handle stands for its id, which no page shows
     * @param device as far as the browser said it
     * @param address where it was opened from; null when that is not known
     * @param here whether it is the one that asks
     */
    public record Open(
            String handle,
            Device device,
            @Nullable String address,
            Instant openedAt,
            Instant lastUsedAt,
            boolean here) {}

    /**
     * An account's sessions, the one that asks first, then the one used last.
     *
     * @param here id of the session that asks
     */
    public List<Open> of(String username, String here) {
        return sessions.findByPrincipalName(username).values().stream()
                .filter(session -> !session.isExpired())
                .map(session -> open(session, here))
                .sorted(Comparator.comparing(Open::here)
                        .thenComparing(Open::lastUsedAt)
                        .reversed())
                .toList();
    }

    private static Open open(Session session, String here) {
        Optional<LogInMark> mark = Optional.ofNullable(session.getAttribute(LogInMark.ATTRIBUTE));
        return new Open(
                SecretCode.hash(session.getId()),
                mark.flatMap(one -> Device.parse(one.device())).orElseGet(() -> Device.of(null)),
                mark.map(LogInMark::address).orElse(null),
                mark.map(LogInMark::at).orElse(session.getCreationTime()),
                session.getLastAccessedTime(),
                session.getId().equals(here));
    }

    /**
     * Ends one of an account's sessions.
     *
     * @throws NotFound when the account has none by this handle
     */
    public void end(String username, String handle) {
        sessions.deleteById(sessions.findByPrincipalName(username).keySet().stream()
                .filter(id -> SecretCode.hash(id).equals(handle))
                .findFirst()
                .orElseThrow(NotFound::new));
    }

    /**
     * Ends all others of an account, as when a key that may have opened one is taken away.
     *
     * @param kept id of the session that goes on
     */
    public void endOthers(String username, String kept) {
        Map<String, ? extends Session> all = sessions.findByPrincipalName(username);
        all.keySet().stream().filter(id -> !id.equals(kept)).forEach(sessions::deleteById);
    }
}
