package org.scrubline.scoring.estimate;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.scoring.Require;

/**
 * The non-decreasing sequence f closest to y in weighted least squares, minimising sum(w (y - f)²), by pooling adjacent
 * violators in one pass.
 *
 * <p>The answer is unique and made of weighted means of neighbours; a series that never falls is returned as it is, one
 * that only falls as its mean. Exact up to rounding; O(n). Barlow, Bartholomew, Bremner and Brunk, Statistical
 * Inference under Order Restrictions, Wiley 1972.
 */
public final class MonotoneFit {
    private MonotoneFit() {}

    private record Block(double mean, double weight, int size) {
        Block with(Block next) {
            double total = weight + next.weight;
            return new Block(mean + (next.mean - mean) * next.weight / total, total, size + next.size);
        }
    }

    /**
     * The fit with equal weights.
     *
     * @param y at least one number, in the order in which the fit must not fall
     * @return one value for each y, never falling, between the smallest and the largest y
     * @throws IllegalArgumentException when there is none or one is no number
     */
    public static List<Double> of(double... y) {
        double[] weights = new double[y.length];
        java.util.Arrays.fill(weights, 1);
        return of(y, weights);
    }

    /**
     * The fit.
     *
     * @param y at least one number, in the order in which the fit must not fall
     * @param weights above 0, one for each y
     * @return one value for each y, never falling, between the smallest and the largest y
     * @throws IllegalArgumentException when lists are empty or differ in length, a y is no number, or a weight is not
     *     above 0
     */
    public static List<Double> of(double[] y, double[] weights) {
        Require.finite("The series", y, 1);
        Require.sameLength("The series", y.length, "the list of weights", weights.length);
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < y.length; i++) {
            Block block = new Block(y[i], Require.positive("A weight", weights[i]), 1);
            while (!blocks.isEmpty() && blocks.get(blocks.size() - 1).mean >= block.mean) {
                block = blocks.remove(blocks.size() - 1).with(block);
            }
            blocks.add(block);
        }
        List<Double> fit = new ArrayList<>(y.length);
        for (Block block : blocks) {
            for (int i = 0; i < block.size; i++) {
                fit.add(block.mean);
            }
        }
        return List.copyOf(fit);
    }
}
