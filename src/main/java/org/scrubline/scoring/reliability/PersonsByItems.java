package org.scrubline.scoring.reliability;

import java.util.OptionalDouble;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * Generalizability study of persons crossed with items (or cases, or raters), one score a cell.
 *
 * <p>Components come from the mean squares of the two-way analysis of variance and may be negative; they are then
 * reported as they are. Input: persons x items without gaps, both at least 2.
 *
 * <p>Brennan, Generalizability Theory, Springer 2001, chapter 2, doi:10.1007/978-1-4757-3456-0; Brennan and Kane,
 * J Educ Meas 1977;14:277 (phi lambda).
 */
public final class PersonsByItems {
    private final TwoWayTable table;

    private PersonsByItems(TwoWayTable table) {
        this.table = table;
    }

    /** From scores, persons x items. */
    public static PersonsByItems of(double[][] scores) {
        return new PersonsByItems(new TwoWayTable("The table of scores", scores));
    }

    /** Number of items in the data. */
    public int items() {
        return table.columns;
    }

    /** Mean of all scores. */
    public double mean() {
        return table.mean;
    }

    /** Mean square of persons. */
    public double personMeanSquare() {
        return table.rowMeanSquare;
    }

    /** Mean square of items. */
    public double itemMeanSquare() {
        return table.columnMeanSquare;
    }

    /** Mean square of the residual. */
    public double residualMeanSquare() {
        return table.residualMeanSquare;
    }

    /** Variance of persons. */
    public double personVariance() {
        return (table.rowMeanSquare - table.residualMeanSquare) / table.columns;
    }

    /** Variance of items. */
    public double itemVariance() {
        return (table.columnMeanSquare - table.residualMeanSquare) / table.rows;
    }

    /** Variance of the residual. */
    public double residualVariance() {
        return table.residualMeanSquare;
    }

    /** The mean of {@code items} items, at least 1. */
    public Projection projected(int items) {
        Require.atLeast("The number of items", items, 1);
        return new Projection(
                personVariance(), residualVariance() / items, (itemVariance() + residualVariance()) / items);
    }

    /**
     * Dependability of decisions at a cut on the scale of one item, for the items of the data. The squared distance of
     * the mean from the cut is taken without bias, its sampling variance subtracted.
     */
    public OptionalDouble phiLambda(double cut) {
        Require.finite("The cut", cut);
        Projection own = projected(table.columns);
        double meanVariance = personVariance() / table.rows
                + itemVariance() / table.columns
                + residualVariance() / ((double) table.rows * table.columns);
        double signal = personVariance() + TwoWayTable.square(table.mean - cut) - meanVariance;
        return Ratio.of(signal, signal + own.absoluteError());
    }
}
