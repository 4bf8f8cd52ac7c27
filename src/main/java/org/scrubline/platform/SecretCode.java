package org.scrubline.platform;

import java.security.SecureRandom;
import java.util.Locale;

/** Codes that open something once: 100 bits, written in groups without letters that look alike; stored as a hash. */
public final class SecretCode {

    private static final String ALPHABET = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private static final int LENGTH = 20;
    private static final SecureRandom RANDOM = new SecureRandom();

    private SecretCode() {}

    public static String create() {
        StringBuilder code = new StringBuilder();
        for (int i = 0; i < LENGTH; i++) {
            if (i > 0 && i % 5 == 0) {
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
