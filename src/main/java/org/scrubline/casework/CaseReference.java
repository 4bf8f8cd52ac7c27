package org.scrubline.casework;

import java.security.SecureRandom;
import java.util.random.RandomGenerator;
import java.util.regex.Pattern;

/**
 * The pseudonymous reference of a case: letter, digit, hyphen, three digits, such as {@code K7-204}. Drawn at random,
 * so that it says nothing; what it stands for is known in the hospital alone.
 */
final class CaseReference {

    // No I and no O: read from a list in a theatre they look like digits.
    private static final String LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    private static final Pattern FORM = Pattern.compile("[A-Z][0-9]-[0-9]{3}");
    private static final SecureRandom RANDOM = new SecureRandom();

    private CaseReference() {}

    /** A fresh one; whether it is taken only storing it can tell. */
    static String draw() {
        return draw(RANDOM);
    }

    static String draw(RandomGenerator random) {
        return "%c%d-%03d"
                .formatted(LETTERS.charAt(random.nextInt(LETTERS.length())), random.nextInt(10), random.nextInt(1000));
    }

    static boolean wellFormed(String reference) {
        return FORM.matcher(reference).matches();
    }
}
