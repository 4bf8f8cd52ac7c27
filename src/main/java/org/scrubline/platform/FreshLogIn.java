package org.scrubline.platform;

import jakarta.servlet.http.HttpSession;

/** Whether the person of this request showed who they are just now, as pages ask that hand out keys. */
public interface FreshLogIn {

    /** Within the last five minutes, at log-in or since. */
    boolean fresh(HttpSession session);
}
