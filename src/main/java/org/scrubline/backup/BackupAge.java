package org.scrubline.backup;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * The newest nightly backup as it looks now.
 *
 * @param state what to think of it
 * @param created when it began; null when there is none
 * @param age since then; null when there is none
 * @param bytes size of its file, 0 when there is none
 */
public record BackupAge(
        State state, @Nullable Instant created, @Nullable Duration age, long bytes) {

    /** From here on a backup is old. */
    public static final Duration OLD = Duration.ofHours(36);

    /** What to think of the newest backup. */
    public enum State {
        /** Not older than 36 hours. */
        RECENT,
        /** Older than 36 hours. */
        OLD,
        /** Nightly backups are on and there is none yet. */
        NONE_YET,
        /** Nightly backups are off: the database server's own backups count. */
        NOT_HERE,
        /** The directory cannot be read. */
        UNKNOWN
    }

    static BackupAge of(BackupFolder.Entry newest, Instant now) {
        Duration age = Duration.between(newest.created(), now);
        return new BackupAge(age.compareTo(OLD) > 0 ? State.OLD : State.RECENT, newest.created(), age, newest.bytes());
    }

    static BackupAge without(State state) {
        return new BackupAge(state, null, null, 0);
    }
}
