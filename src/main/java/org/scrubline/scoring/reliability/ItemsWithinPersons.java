package org.scrubline.scoring.reliability;

import org.scrubline.scoring.Require;

/**
 * Generalizability study of items nested in persons: each person has own items (own cases, own raters), the same
 * number. Error against others and against a standard are then the same.
 *
 * <p>Input: persons x own items without gaps, both at least 2. A negative variance of persons is reported as it is.
 * Brennan, Generalizability Theory, Springer 2001, chapter 2, doi:10.1007/978-1-4757-3456-0.
 *
 * @param items number of items a person
 * @param personMeanSquare mean square of persons
 * @param itemMeanSquare mean square of items within persons
 */
public record ItemsWithinPersons(int items, double personMeanSquare, double itemMeanSquare) {

    /** From scores, persons x own items. */
    public static ItemsWithinPersons of(double[][] scores) {
        TwoWayTable table = new TwoWayTable("The table of scores", scores);
        return new ItemsWithinPersons(table.columns, table.rowMeanSquare, table.withinRowMeanSquare);
    }

    /** Variance of persons. */
    public double personVariance() {
        return (personMeanSquare - itemMeanSquare) / items;
    }

    /** Variance of items within persons. */
    public double itemVariance() {
        return itemMeanSquare;
    }

    /** The mean of {@code number} own items, at least 1. */
    public Projection projected(int number) {
        double error = itemVariance() / Require.atLeast("The number of items", number, 1);
        return new Projection(personVariance(), error, error);
    }
}
