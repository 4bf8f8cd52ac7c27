package org.scrubline.ledger.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The page.
 *
 * @param size entries of the ledger
 * @param checkpoint the newest in words; null before the first
 * @param check the newest check; null before the first
 */
record EvidencePage(
        long size,
        @Nullable String checkpoint,
        String verifierKey,
        @Nullable CheckView check) {

    /**
     * A check.
     *
     * @param state in words: waiting, how far, or when it was finished
     * @param running whether it is not finished
     * @param verdict empty while it is running
     */
    record CheckView(String state, boolean running, String verdict, List<String> facts, List<String> findings) {}
}
