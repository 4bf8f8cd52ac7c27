package org.scrubline.scoring.reliability;

import java.util.Arrays;
import org.scrubline.scoring.Require;

/**
 * Sums of squares of a complete table, rows by columns, one value a cell. Values are taken as differences from the
 * first one, so a constant table gives exact zeros; sums of squares below 1e-14 of the total are rounding and count as
 * zero.
 */
final class TwoWayTable {
    private static final double ROUNDING = 1e-14;

    final int rows;
    final int columns;
    final double mean;
    final double rowMeanSquare;
    final double columnMeanSquare;
    final double residualMeanSquare;
    /** Mean square of the columns within the rows, column effect included. */
    final double withinRowMeanSquare;

    TwoWayTable(String name, double[][] values) {
        Require.table(name, values, 2, 2);
        rows = values.length;
        columns = values[0].length;
        double origin = values[0][0];
        double[] rowMeans = new double[rows];
        double[] columnMeans = new double[columns];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                rowMeans[r] += (values[r][c] - origin) / columns;
                columnMeans[c] += (values[r][c] - origin) / rows;
            }
        }
        double shifted = Arrays.stream(rowMeans).average().orElse(0);
        double residual = 0;
        double total = 0;
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                double value = values[r][c] - origin;
                residual += square(value - rowMeans[r] - columnMeans[c] + shifted);
                total += square(value - shifted);
            }
        }
        mean = origin + shifted;
        double ofRows = unlessRounding(columns * squaresAround(rowMeans, shifted), total);
        double ofColumns = unlessRounding(rows * squaresAround(columnMeans, shifted), total);
        double rest = unlessRounding(residual, total);
        rowMeanSquare = ofRows / (rows - 1);
        columnMeanSquare = ofColumns / (columns - 1);
        residualMeanSquare = rest / ((rows - 1.0) * (columns - 1));
        withinRowMeanSquare = (ofColumns + rest) / (rows * (columns - 1.0));
    }

    static double square(double x) {
        return x * x;
    }

    static double squaresAround(double[] values, double centre) {
        return Arrays.stream(values).map(v -> square(v - centre)).sum();
    }

    static double unlessRounding(double sumOfSquares, double total) {
        return sumOfSquares <= ROUNDING * total ? 0 : sumOfSquares;
    }
}
