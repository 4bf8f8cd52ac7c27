package org.scrubline.entitlement;

import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.scrubline.rubric.Band;

/** A set of complexity bands as one word, such as {@code AB}: the letters in order. */
public final class Bands {

    private Bands() {}

    public static String write(Collection<Band> bands) {
        return bands.stream().distinct().sorted().map(Band::name).collect(Collectors.joining());
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IllegalArgumentException for another letter
     */
    public static Set<Band> read(String word) {
        return Arrays.stream(word.split(""))
                .filter(letter -> !letter.isEmpty())
                .map(Band::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Band.class)));
    }
}
