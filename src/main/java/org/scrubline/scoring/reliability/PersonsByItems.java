package org.scrubline.scoring.reliability;

import java.util.OptionalDouble;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * Generalizability study of persons crossed with items (or cases, or raters), one score a cell.
 *
 * <p>Components come from the mean squares of the two-way analysis of variance: persons (MS(p) - MS(pi)) / items, items
 * (MS(i) - MS(pi)) / persons, residual MS(pi). They may be negative and are then reported as they are. Input: persons x
 * items without gaps, both at least 2.
 *
 * <p>Brennan, Generalizability Theory, Springer 2001, chapter 2, doi:10.1007/978-1-4757-3456-0; Brennan and Kane, J
 * Educ Meas 1977;14:277, doi:10.1111/j.1745-3984.1977.tb00045.x (phi lambda).
 */
public final class PersonsByItems {
    private final TwoWayTable table;

    private PersonsByItems(TwoWayTable table) {
        this.table = table;
    }

    /**
     * The study of a table.
     *
     * @param scores persons x items, at least 2 of each
     * @return the study
     * @throws IllegalArgumentException when the table is too small, not rectangular or holds something that is no
     *     number
     */
    public static PersonsByItems of(double[][] scores) {
        return new PersonsByItems(new TwoWayTable("The table of scores", scores));
    }

    /** {@return the number of items in the data} */
    public int items() {
        return table.columns;
    }

    /** {@return the mean of all scores} */
    public double mean() {
        return table.mean;
    }

    /** {@return the mean square of persons} */
    public double personMeanSquare() {
        return table.rowMeanSquare;
    }

    /** {@return the mean square of items} */
    public double itemMeanSquare() {
        return table.columnMeanSquare;
    }

    /** {@return the mean square of the residual} */
    public double residualMeanSquare() {
        return table.residualMeanSquare;
    }

    /** {@return the variance of persons; may be negative} */
    public double personVariance() {
        return (table.rowMeanSquare - table.residualMeanSquare) / table.columns;
    }

    /** {@return the variance of items; may be negative} */
    public double itemVariance() {
        return (table.columnMeanSquare - table.residualMeanSquare) / table.rows;
    }

    /** {@return the variance of the residual} */
    public double residualVariance() {
        return table.residualMeanSquare;
    }

    /**
     * {@return what the mean of {@code items} items would be worth: relative error MS(pi) / items, absolute error that
     * of items added}
     *
     * @param items 1 or more
     * @throws IllegalArgumentException when it is less
     */
    public Projection projected(int items) {
        Require.atLeast("The number of items", items, 1);
        return new Projection(
                personVariance(), residualVariance() / items, (itemVariance() + residualVariance()) / items);
    }

    /**
     * Dependability of decisions at a cut, for the items of the data: (σ²(p) + D) / (σ²(p) + D + absolute error), D =
     * (mean - cut)² less the sampling variance of the mean, so that the squared distance is taken without bias. Least
     * at the mean.
     *
     * @param cut on the scale of one item
     * @return the index; empty when its denominator is 0
     * @throws IllegalArgumentException when the cut is no number
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
