package org.scrubline.platform.security;

import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;
import org.springframework.stereotype.Component;

/** The sessions people are logged in with. */
@Component
public class OpenSessions {

    private final FindByIndexNameSessionRepository<? extends Session> sessions;

    OpenSessions(FindByIndexNameSessionRepository<? extends Session> sessions) {
        this.sessions = sessions;
    }

    /**
     * Ends all others of an account, as when a key that may have opened one is taken away.
     *
     * @param kept id of the session that goes on
     */
    public void endOthers(String username, String kept) {
        sessions.findByPrincipalName(username).keySet().stream()
                .filter(id -> !id.equals(kept))
                .forEach(sessions::deleteById);
    }
}
