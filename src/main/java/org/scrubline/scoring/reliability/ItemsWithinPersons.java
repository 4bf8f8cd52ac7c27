package org.scrubline.scoring.reliability;

import org.scrubline.scoring.Require;

/**
 * Generalizability study of items nested in persons: each person has own items (own cases, own raters), the same
 * number. Error against others and against a standard are then the same.
 *
 * <p>Input: persons x own items without gaps, both at least 2. Components: persons (MS(p) - MS(i:p)) / items, items
 * within persons MS(i:p). A negative variance of persons is reported as it is. Brennan, Generalizability Theory,
 * Springer 2001, chapter 2, doi:10.1007/978-1-4757-3456-0.
 *
 * @param items number of items a person
 * @param personMeanSquare mean square of persons, 0 or more
 * @param itemMeanSquare mean square of items within persons, 0 or more
 */
public record ItemsWithinPersons(int items, double personMeanSquare, double itemMeanSquare) {

    /**
     * The study of a table.
     *
     * @param scores persons x own items, at least 2 of each
     * @return the study
     * @throws IllegalArgumentException when the table is too small, not rectangular or holds something that is no
     *     number
     */
    public static ItemsWithinPersons of(double[][] scores) {
        TwoWayTable table = new TwoWayTable("The table of scores", scores);
        return new ItemsWithinPersons(table.columns, table.rowMeanSquare, table.withinRowMeanSquare);
    }

    /** {@return the variance of persons; may be negative} */
    public double personVariance() {
        return (personMeanSquare - itemMeanSquare) / items;
    }

    /** {@return the variance of items within persons} */
    public double itemVariance() {
        return itemMeanSquare;
    }

    /**
     * {@return what the mean of {@code number} own items would be worth}
     *
     * @param number of items, 1 or more
     * @throws IllegalArgumentException when it is less
     */
    public Projection projected(int number) {
        double error = itemVariance() / Require.atLeast("The number of items", number, 1);
        return new Projection(personVariance(), error, error);
    }
}
