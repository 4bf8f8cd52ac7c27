package org.scrubline.platform;

import java.security.SecureRandom;
import java.util.Locale;

/** Codes that open something once, written in groups without letters that look alike; five bits a character, stored as a hash. */
public final class SecretCode {

    private static final String ALPHABET = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private static final int LENGTH = 20;
    private static final int GROUP = 5;
    private static final int SHORT_GROUP = 4;
    private static final SecureRandom RANDOM = new SecureRandom();

    private SecretCode() {}

    /** A code of 100 bits. */
    public static String create() {
        return create(LENGTH);
    }

    /**
     * A code of another length, in groups of five, or of four when it is short.
     *
     * @param length characters: 8 where a code lives for hours and guessing is slowed, 25 where its hash is kept for years
     */
    public static String create(int length) {
        int group = length < LENGTH ? SHORT_GROUP : GROUP;
        StringBuilder code = new StringBuilder();
        for (int i = 0; i < length; i++) {
            if (i > 0 && i % group == 0) {
                code.append('-');
            }
            code.append(ALPHABET.charAt(RANDOM.nextInt(ALPHABET.length())));
        }
        return code.toString();
    }

    /** SHA-256 in hex of the code as typed, without case, spaces and hyphens. */
    public static String hash(String code) {
        String plain = code.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
        return Sha256.hex(plain);
    }
}
