package org.scrubline.platform;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Something that was done and has to be provable later. Implemented by records in the past tense that hold ids and
 * values; published inside the transaction that did it, which cannot commit without the entry (decision 0009). The
 * organisation is the one of the tenant scope.
 */
public interface Audited {

    /** What was done, such as {@code sheet-signed}: the end of a message key, and the same for ever. */
    String action();

    /** What it was done to. */
    Item item();

    /** Who did it; null stands for the person of the request, and for the server itself where there is none. */
    default @Nullable UUID actor() {
        return null;
    }

    /** The actor's roles then; empty stands for those of the person of the request. */
    default Set<Role> roles() {
        return Set.of();
    }

    /** For whom the actor acted, when for somebody else. */
    default @Nullable UUID onBehalfOf() {
        return null;
    }

    /** The person the record is about, who may read this entry. */
    default @Nullable UUID about() {
        return null;
    }

    /** The programme it belongs to; null when it concerns the whole organisation. */
    default @Nullable UUID programme() {
        return null;
    }

    /** The reason given for it, in the words of whoever gave it. */
    default @Nullable String reason() {
        return null;
    }

    /** The value before. Free text never stands here, only its {@link #hash}. */
    default @Nullable String before() {
        return null;
    }

    /** The value after; as {@link #before}. */
    default @Nullable String after() {
        return null;
    }

    /** When it happened on the device, for what was done without a connection. */
    default @Nullable Instant deviceTime() {
        return null;
    }

    /**
     * A record.
     *
     * @param kind what it is, such as {@code signed-sheet}
     * @param version its version where it has several
     * @param label what people call it, such as the reference of the case; may be empty
     */
    record Item(String kind, @Nullable UUID id, @Nullable Integer version, String label) {}

    /** What stands for a text nobody but its readers should see: the SHA-256 of its UTF-8 bytes, in hexadecimal. */
    static String hash(String freeText) {
        return "sha256:" + Sha256.hex(freeText);
    }
}
