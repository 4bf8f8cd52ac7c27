package org.scrubline.platform.passkey;

import jakarta.servlet.http.HttpSession;
import java.security.SecureRandom;
import org.scrubline.platform.AssertionCheck;
import org.scrubline.platform.Base64Url;

/**
 * Random challenges, one a session and purpose. Two open pages share theirs; whichever answers first uses it up. What is
 * signed for good has no challenge here: its challenge is its hash.
 */
public enum Challenges {
    LOG_IN,
    CONFIRM,
    REGISTER;

    private static final SecureRandom RANDOM = new SecureRandom();

    /** The challenge of this session that nothing has answered yet. */
    public byte[] current(HttpSession session) {
        if (session.getAttribute(attribute()) instanceof String waiting) {
            return Base64Url.bytes(waiting);
        }
        byte[] fresh = new byte[AssertionCheck.CHALLENGE_LENGTH];
        RANDOM.nextBytes(fresh);
        session.setAttribute(attribute(), Base64Url.text(fresh));
        return fresh;
    }

    /** The same, used up by this call; no bytes, which nothing answers, when none was waiting. */
    public byte[] take(HttpSession session) {
        Object waiting = session.getAttribute(attribute());
        session.removeAttribute(attribute());
        return waiting instanceof String text ? Base64Url.bytes(text) : new byte[0];
    }

    private String attribute() {
        return "scrubline.challenge." + name();
    }
}
