package org.scrubline.signoff.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Passkeys;

/**
 * What was signed about a version, and what the reader may sign about it now.
 *
 * @param href path of the record
 * @param record id of the version
 * @param hash content hash of the version, sent back with a signature
 * @param needed why a countersignature is needed; empty when none is
 * @param awaited whether it is still missing
 * @param signatures oldest first
 * @param mayCountersign whether the reader may countersign now
 * @param mayAcknowledge whether the reader may sign having read it
 * @param mayDecline whether the reader may record not acknowledging it
 * @param acts the same as buttons, for a passkey
 * @param ask what to ask the reader's passkeys; null when there are none
 * @param accepted whether the reader accepted what a signature means; without, no form is shown
 */
record VersionSignaturesView(
        String href,
        UUID record,
        String hash,
        List<String> needed,
        boolean awaited,
        List<Signature> signatures,
        boolean mayCountersign,
        boolean mayAcknowledge,
        boolean mayDecline,
        List<Act> acts,
        Passkeys.@Nullable Ask ask,
        boolean accepted) {

    /** A button. */
    record Act(String value, String label) {}

    /**
     * One signature, ready to print.
     *
     * @param name as signed
     * @param nameNow the name the signer goes by now; null when it is the same
     * @param words comment or reason; null when there is none
     */
    record Signature(
            String name,
            @Nullable String nameNow,
            String role,
            String at,
            String meaning,
            @Nullable String words,
            String hash) {}

    /** Whether the reader is asked for anything. */
    public boolean asks() {
        return mayCountersign || mayAcknowledge;
    }
}
