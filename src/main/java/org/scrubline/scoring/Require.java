package org.scrubline.scoring;

import java.util.List;

/**
 * Checks of arguments; each throws an {@link IllegalArgumentException} whose message is one sentence for the user. NaN
 * passes none of the checks of a number. Names begin the sentence ("The limit") or stand inside it.
 */
public final class Require {
    private Require() {}

    /**
     * {@return the value, strictly between 0 and 1}
     *
     * @param name of what is checked
     * @param value to be checked
     * @throws IllegalArgumentException when it is 0, 1, outside or NaN
     */
    public static double insideUnit(String name, double value) {
        that(value > 0 && value < 1, "%s must lie between 0 and 1, both excluded, but is %s.", name, value);
        return value;
    }

    /**
     * {@return the value, from 0 to 1, both included}
     *
     * @param name of what is checked
     * @param value to be checked
     * @throws IllegalArgumentException when it is outside or NaN
     */
    public static double probability(String name, double value) {
        that(value >= 0 && value <= 1, "%s must lie from 0 to 1, but is %s.", name, value);
        return value;
    }

    /**
     * {@return the value, finite and above 0}
     *
     * @param name of what is checked
     * @param value to be checked
     * @throws IllegalArgumentException when it is 0 or less, infinite or NaN
     */
    public static double positive(String name, double value) {
        that(value > 0 && Double.isFinite(value), "%s must be a number above 0, but is %s.", name, value);
        return value;
    }

    /**
     * {@return the value, finite}
     *
     * @param name of what is checked
     * @param value to be checked
     * @throws IllegalArgumentException when it is infinite or NaN
     */
    public static double finite(String name, double value) {
        that(Double.isFinite(value), "%s must be a number, but is %s.", name, value);
        return value;
    }

    /**
     * {@return the same array, not copied, of finite numbers}
     *
     * @param name of what is checked
     * @param values to be checked
     * @param least smallest length
     * @throws IllegalArgumentException when it is shorter or one value is infinite or NaN
     */
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

    /**
     * {@return the value, {@code least} or more}
     *
     * @param name of what is checked
     * @param value to be checked
     * @param least smallest value
     * @throws IllegalArgumentException when it is less
     */
    public static int atLeast(String name, int value, int least) {
        that(value >= least, "%s must be %s or more, but is %s.", name, least, value);
        return value;
    }

    /**
     * {@return the same list, with something in it}
     *
     * @param <T> of the elements
     * @param name of what is checked
     * @param values to be checked
     * @throws IllegalArgumentException when it is empty
     */
    public static <T> List<T> notEmpty(String name, List<T> values) {
        that(!values.isEmpty(), "%s is empty.", name);
        return values;
    }

    /**
     * Two lengths that must agree.
     *
     * @param first name of what has the first length
     * @param one the first length
     * @param second name of what has the second
     * @param two the second length
     * @throws IllegalArgumentException when they differ
     */
    public static void sameLength(String first, int one, String second, int two) {
        that(one == two, "%s has %s values and %s has %s; they must agree.", first, one, second, two);
    }

    /**
     * {@return the same table, not copied: rectangular, of finite numbers}
     *
     * @param name of what is checked
     * @param rows to be checked
     * @param leastRows smallest number of rows
     * @param leastColumns smallest number of columns
     * @throws IllegalArgumentException when it is smaller, rows differ in length, or one value is infinite or NaN
     */
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

    /**
     * Any other condition, with the sentence that says what is wrong.
     *
     * @param condition what must hold
     * @param sentence a format of {@link String#format}, so a per cent sign is written twice
     * @param details its arguments
     * @throws IllegalArgumentException when the condition does not hold
     */
    public static void that(boolean condition, String sentence, Object... details) {
        if (!condition) {
            throw new IllegalArgumentException(String.format(java.util.Locale.ROOT, sentence, details));
        }
    }
}
