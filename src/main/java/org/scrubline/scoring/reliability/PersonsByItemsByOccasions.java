package org.scrubline.scoring.reliability;

import java.util.Arrays;
import org.scrubline.scoring.Require;

/**
 * Generalizability study of persons x items x occasions, fully crossed, one score a cell; for example trainees x steps
 * x cases.
 *
 * <p>Input: at least 2 of each. Components from the mean squares of the three-way analysis of variance, negative ones
 * as they are. Brennan, Generalizability Theory, Springer 2001, chapter 3, doi:10.1007/978-1-4757-3456-0.
 */
public final class PersonsByItemsByOccasions {

    /**
     * One number for each effect.
     *
     * @param p persons
     * @param i items
     * @param o occasions
     * @param pi persons by items
     * @param po persons by occasions
     * @param io items by occasions
     * @param pio the residual
     */
    public record Effects(double p, double i, double o, double pi, double po, double io, double pio) {}

    private final int persons;
    private final int occasions;
    private final int items;
    private final Effects meanSquares;

    private PersonsByItemsByOccasions(double[][][] scores) {
        Require.that(scores.length >= 2, "The study needs at least 2 persons, but has %s.", scores.length);
        persons = scores.length;
        occasions = scores[0].length;
        items = occasions == 0 ? 0 : scores[0][0].length;
        for (double[][] person : scores) {
            Require.table("The occasions of a person", person, 2, 2);
            Require.sameLength("The first person", occasions, "another person", person.length);
            Require.sameLength("The first occasion", items, "another occasion", person[0].length);
        }
        meanSquares = meanSquares(scores);
    }

    /**
     * The study of a cube.
     *
     * @param scores [person][occasion][item], at least 2 of each
     * @return the study
     * @throws IllegalArgumentException when the cube is too small, not rectangular or holds something that is no number
     */
    public static PersonsByItemsByOccasions of(double[][][] scores) {
        return new PersonsByItemsByOccasions(scores);
    }

    private Effects meanSquares(double[][][] x) {
        double[][] po = new double[persons][occasions];
        double[][] pi = new double[persons][items];
        double[][] oi = new double[occasions][items];
        double origin = x[0][0][0];
        for (int p = 0; p < persons; p++) {
            for (int o = 0; o < occasions; o++) {
                for (int i = 0; i < items; i++) {
                    double value = x[p][o][i] - origin;
                    po[p][o] += value / items;
                    pi[p][i] += value / occasions;
                    oi[o][i] += value / persons;
                }
            }
        }
        double[] pMean = rowMeans(po);
        double[] oMean = rowMeans(oi);
        double[] iMean = columnMeans(oi);
        double mean = Arrays.stream(pMean).average().orElse(0);
        double residual = 0;
        double total = 0;
        for (int p = 0; p < persons; p++) {
            for (int o = 0; o < occasions; o++) {
                for (int i = 0; i < items; i++) {
                    double value = x[p][o][i] - origin;
                    double main = pMean[p] + oMean[o] + iMean[i] - mean;
                    total += TwoWayTable.square(value - mean);
                    residual += TwoWayTable.square(value - po[p][o] - pi[p][i] - oi[o][i] + main);
                }
            }
        }
        return overDegrees(
                total,
                new Effects(
                        occasions * items * TwoWayTable.squaresAround(pMean, mean),
                        persons * occasions * TwoWayTable.squaresAround(iMean, mean),
                        persons * items * TwoWayTable.squaresAround(oMean, mean),
                        occasions * interaction(pi, pMean, iMean, mean),
                        items * interaction(po, pMean, oMean, mean),
                        persons * interaction(oi, oMean, iMean, mean),
                        residual));
    }

    private Effects overDegrees(double total, Effects squares) {
        double p = persons - 1.0;
        double o = occasions - 1.0;
        double i = items - 1.0;
        return new Effects(
                clean(squares.p, total) / p,
                clean(squares.i, total) / i,
                clean(squares.o, total) / o,
                clean(squares.pi, total) / (p * i),
                clean(squares.po, total) / (p * o),
                clean(squares.io, total) / (o * i),
                clean(squares.pio, total) / (p * o * i));
    }

    private static double clean(double squares, double total) {
        return TwoWayTable.unlessRounding(squares, total);
    }

    private static double interaction(double[][] cells, double[] rows, double[] columns, double mean) {
        double sum = 0;
        for (int r = 0; r < rows.length; r++) {
            for (int c = 0; c < columns.length; c++) {
                sum += TwoWayTable.square(cells[r][c] - rows[r] - columns[c] + mean);
            }
        }
        return sum;
    }

    private static double[] rowMeans(double[][] cells) {
        return Arrays.stream(cells)
                .mapToDouble(row -> Arrays.stream(row).average().orElse(0))
                .toArray();
    }

    private static double[] columnMeans(double[][] cells) {
        double[] means = new double[cells[0].length];
        for (double[] row : cells) {
            for (int c = 0; c < means.length; c++) {
                means[c] += row[c] / cells.length;
            }
        }
        return means;
    }

    /** {@return the number of items in the data} */
    public int items() {
        return items;
    }

    /** {@return the number of occasions in the data} */
    public int occasions() {
        return occasions;
    }

    /** {@return the mean squares, 0 or more} */
    public Effects meanSquares() {
        return meanSquares;
    }

    /** {@return the variance components; all but the residual may be negative} */
    public Effects variances() {
        Effects ms = meanSquares;
        return new Effects(
                (ms.p - ms.pi - ms.po + ms.pio) / (occasions * items),
                (ms.i - ms.pi - ms.io + ms.pio) / (persons * occasions),
                (ms.o - ms.po - ms.io + ms.pio) / (persons * items),
                (ms.pi - ms.pio) / occasions,
                (ms.po - ms.pio) / items,
                (ms.io - ms.pio) / persons,
                ms.pio);
    }

    /**
     * {@return what the mean over other items and other occasions would be worth: universe score σ²(p), relative error
     * σ²(pi) / ni + σ²(po) / no + σ²(pio) / (ni no), absolute error with σ²(i), σ²(o) and σ²(io) added alike}
     *
     * @param ni number of items, 1 or more
     * @param no number of occasions, 1 or more
     * @throws IllegalArgumentException when one is less
     */
    public Projection projected(int ni, int no) {
        Effects v = requireNumbers(ni, no);
        double relative = v.pi / ni + v.po / no + v.pio / ((double) ni * no);
        return new Projection(v.p, relative, relative + v.i / ni + v.o / no + v.io / ((double) ni * no));
    }

    /**
     * {@return what the mean over the same items, taken as all of interest, and other occasions would be worth: σ²(pi)
     * / ni counts to the universe score, σ²(i) not at all}
     *
     * @param ni number of items, 1 or more
     * @param no number of occasions, 1 or more
     * @throws IllegalArgumentException when one is less
     */
    public Projection projectedWithItemsFixed(int ni, int no) {
        Effects v = requireNumbers(ni, no);
        double relative = v.po / no + v.pio / ((double) ni * no);
        return new Projection(v.p + v.pi / ni, relative, relative + v.o / no + v.io / ((double) ni * no));
    }

    private Effects requireNumbers(int ni, int no) {
        Require.atLeast("The number of items", ni, 1);
        Require.atLeast("The number of occasions", no, 1);
        return variances();
    }
}
