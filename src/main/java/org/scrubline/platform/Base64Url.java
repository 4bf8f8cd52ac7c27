package org.scrubline.platform;

import java.util.Base64;

/** Base64url without padding (RFC 4648 section 5), where each text stands for other bytes than every other. */
public final class Base64Url {

    private Base64Url() {}

    public static String text(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /**
     * The bytes of a text.
     *
     * @throws IllegalArgumentException when this is not exactly how {@link #text} would write it; a lenient reader would
     *     let the spare bits of the last letter change unseen
     */
    public static byte[] bytes(String text) {
        byte[] bytes = Base64.getUrlDecoder().decode(text);
        if (!text(bytes).equals(text)) {
            throw new IllegalArgumentException("not base64url as written here");
        }
        return bytes;
    }
}
