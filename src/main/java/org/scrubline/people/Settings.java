package org.scrubline.people;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/** Reads and changes the numbers programmes work by. */
public interface Settings {

    /** Longest reason in characters. */
    int REASON_LENGTH = 500;

    /** What holds in a programme now; the defaults where it changed nothing. */
    ProgrammeSettings of(UUID programmeId);

    /** What held in a programme at an instant. */
    ProgrammeSettings of(UUID programmeId, Instant knownAt);

    /** Every change, newest first. */
    List<SettingChange> history(UUID programmeId);

    /**
     * Sets one number from now on. Setting the one that holds already changes nothing and answers what holds.
     *
     * @param typed a whole number in the key's unit
     * @param reason shown with the change for good
     * @return what holds now, or why not; the fields are {@code value} and {@code reason}
     * @throws org.scrubline.platform.NotFound for anyone who neither directs nor administers the programme
     */
    Attempt<ProgrammeSettings> change(SignedIn who, UUID programmeId, SettingKey key, String typed, String reason);
}
