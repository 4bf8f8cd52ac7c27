package org.scrubline.platform.security;

import java.text.Normalizer;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Passwords that are long without being hard to guess. */
final class PasswordPattern {

    /** Our own name, which everybody tries. */
    private static final String PROGRAM = "scrubline";

    private static final String KEYBOARD = "qwertyuiopasdfghjklzxcvbnm";
    private static final int DISTINCT = 5;
    private static final int LONGEST_BLOCK = 8;
    private static final int SHORTEST_NAME = 3;
    /** Letters a password must have besides the names in it. */
    private static final int OWN_LETTERS = 6;

    private PasswordPattern() {}

    /** As it is compared: without case, spaces and ways of writing the same sign. */
    static String fold(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKC)
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\s", "");
    }

    /** Whether it is few signs over and over, a block repeated, or a run along the alphabet, the digits or a keyboard. */
    static boolean found(String password) {
        int[] signs = fold(password).codePoints().toArray();
        return IntStream.of(signs).distinct().count() < DISTINCT || repeats(signs) || runs(signs);
    }

    private static boolean repeats(int[] signs) {
        return IntStream.rangeClosed(1, Math.min(LONGEST_BLOCK, signs.length / 2))
                .anyMatch(block -> IntStream.range(block, signs.length).allMatch(i -> signs[i] == signs[i - block]));
    }

    /** Three of four steps lead to the same sign or a neighbour. */
    private static boolean runs(int[] signs) {
        long near = IntStream.range(1, signs.length)
                .filter(i -> Math.abs(signs[i] - signs[i - 1]) <= 1 || neighbours(signs[i], signs[i - 1]))
                .count();
        return near * 4 >= (signs.length - 1) * 3L;
    }

    private static boolean neighbours(int one, int other) {
        int at = KEYBOARD.indexOf(one);
        int before = KEYBOARD.indexOf(other);
        return at >= 0 && before >= 0 && Math.abs(at - before) == 1;
    }

    /** Whether little is left of it without these names and ours. */
    static boolean madeOf(String password, Collection<String> names) {
        String all = fold(password);
        String rest = all;
        for (String name : parts(names)) {
            rest = rest.replace(name, "");
        }
        return rest.length() < all.length()
                && rest.codePoints().filter(Character::isLetter).count() < OWN_LETTERS;
    }

    /** Longest first, so that a whole name goes before its parts. */
    private static List<String> parts(Collection<String> names) {
        return Stream.concat(Stream.of(PROGRAM), names.stream())
                .flatMap(name -> Stream.concat(Stream.of(name), Stream.of(name.split("[^\\p{L}\\p{N}]+"))))
                .map(PasswordPattern::fold)
                .filter(part -> part.length() >= SHORTEST_NAME)
                .distinct()
                .sorted(Comparator.comparingInt(String::length).reversed())
                .toList();
    }
}
