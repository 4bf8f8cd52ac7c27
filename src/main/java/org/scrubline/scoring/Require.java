package org.scrubline.scoring;

import java.util.List;

/** Checks of arguments; each throws an {@link IllegalArgumentException} whose message is one sentence for the user. */
public final class Require {
    private Require() {}

    /** A probability strictly between 0 and 1. */
    public static double insideUnit(String name, double value) {
        that(value > 0 && value < 1, "%s must lie between 0 and 1, both excluded, but is %s.", name, value);
        return value;
    }

    /** A probability from 0 to 1, both included. */
    public static double probability(String name, double value) {
        that(value >= 0 && value <= 1, "%s must lie from 0 to 1, but is %s.", name, value);
        return value;
    }

    /** A finite number above 0. */
    public static double positive(String name, double value) {
        that(value > 0 && Double.isFinite(value), "%s must be a number above 0, but is %s.", name, value);
        return value;
    }

    /** A finite number. */
    public static double finite(String name, double value) {
        that(Double.isFinite(value), "%s must be a number, but is %s.", name, value);
        return value;
    }

    /** An array of at least {@code least} finite numbers. */
    public static double[] finite(String name, double[] values, int least) {
        that(values.length >= least, "%s needs at least %s values, but has %s.", name, least, values.length);
        for (double value : values) {
            finite("Every value of " + inside(name), value);
        }
        return values;
    }

    private static String inside(String name) {
        return name.startsWith("The ") ? "the " + name.substring(4) : name;
    }

    /** A whole number of at least {@code least}. */
    public static int atLeast(String name, int value, int least) {
        that(value >= least, "%s must be %s or more, but is %s.", name, least, value);
        return value;
    }

    /** A list with something in it. */
    public static <T> List<T> notEmpty(String name, List<T> values) {
        that(!values.isEmpty(), "%s is empty.", name);
        return values;
    }

    /** Two lengths that must agree. */
    public static void sameLength(String first, int one, String second, int two) {
        that(one == two, "%s has %s values and %s has %s; they must agree.", first, one, second, two);
    }

    /** A rectangular table of finite numbers with at least the given size. */
    public static double[][] table(String name, double[][] rows, int leastRows, int leastColumns) {
        that(rows.length >= leastRows, "%s needs at least %s rows, but has %s.", name, leastRows, rows.length);
        for (double[] row : rows) {
            sameLength("The first row of " + name, rows[0].length, "another row", row.length);
            that(
                    row.length >= leastColumns,
                    "%s needs at least %s columns, but has %s.",
                    name,
                    leastColumns,
                    row.length);
            finite(name, row, leastColumns);
        }
        return rows;
    }

    /** Any other condition, with the sentence that says what is wrong. */
    public static void that(boolean condition, String sentence, Object... details) {
        if (!condition) {
            throw new IllegalArgumentException(String.format(java.util.Locale.ROOT, sentence, details));
        }
    }
}
