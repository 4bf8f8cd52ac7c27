package org.scrubline.notice;

import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/** What a supervisor was reminded of, and how they want to be. */
public interface Reminders {

    /** The last stage this person was reminded of, by the id of each sheet that still waits for them. */
    Map<UUID, Stage> of(UUID personId);

    NoticeSettings settings(UUID personId);

    /** Keeps how this person wants to be reminded, or says what is wrong with it. */
    Attempt<NoticeSettings> change(SignedIn who, NoticeSettings settings);

    /** Whether this server sends mail at all. */
    boolean mailIsSet();
}
