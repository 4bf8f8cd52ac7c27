package org.scrubline.scoring;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/** Seeded tables for laws, and ways to rearrange them. */
public final class RandomTables {
    private RandomTables() {}

    /** Scores of persons with a level of their own and columns with an offset of their own, plus noise. */
    public static double[][] scores(long seed, int rows, int columns) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] offset = random.doubles(columns, -1, 1).toArray();
        double[][] table = new double[rows][columns];
        for (double[] row : table) {
            double level = random.nextDouble(-3, 3);
            for (int c = 0; c < columns; c++) {
                row[c] = level + offset[c] + random.nextDouble(-1, 1);
            }
        }
        return table;
    }

    /** The same scores as whole levels 1 to 5. */
    public static double[][] levels(long seed, int rows, int columns) {
        return map(scores(seed, rows, columns), x -> Math.max(1, Math.min(5, Math.rint(3 + x))));
    }

    public static double[][] map(double[][] table, DoubleUnaryOperator each) {
        return Arrays.stream(table)
                .map(row -> Arrays.stream(row).map(each).toArray())
                .toArray(double[][]::new);
    }

    public static double[][] reversedRows(double[][] table) {
        double[][] reversed = table.clone();
        for (int i = 0; i < table.length; i++) {
            reversed[i] = table[table.length - 1 - i];
        }
        return reversed;
    }

    public static double[][] transposed(double[][] table) {
        double[][] transposed = new double[table[0].length][table.length];
        for (int i = 0; i < table.length; i++) {
            for (int j = 0; j < transposed.length; j++) {
                transposed[j][i] = table[i][j];
            }
        }
        return transposed;
    }

    public static double[][] reversedColumns(double[][] table) {
        return transposed(reversedRows(transposed(table)));
    }
}
