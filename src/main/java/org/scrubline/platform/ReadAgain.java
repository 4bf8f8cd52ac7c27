package org.scrubline.platform;

import java.util.Set;

/**
 * The texts this thread's writer was asked to read again because they may name a patient. Sent a second time as it
 * was, such a text is taken as confirmed. Outside a person's request nobody can be asked, so nothing is.
 */
public final class ReadAgain {

    private static final ThreadLocal<Set<String>> ASKED = new ThreadLocal<>();

    private ReadAgain() {}

    /**
     * Begins the work of a writer; {@link #end} has to follow.
     *
     * @param asked SHA-256 of each text this writer was asked about before; those asked about now are added
     */
    public static void begin(Set<String> asked) {
        ASKED.set(asked);
    }

    public static void end() {
        ASKED.remove();
    }

    /** Whether the writer has to be asked about this text now, which is remembered. */
    static boolean needed(String text) {
        Set<String> asked = ASKED.get();
        return asked != null && asked.add(Sha256.hex(text));
    }
}
