package org.scrubline.scoring.reliability;

import java.util.Arrays;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * Internal consistency of a sum of items: Cronbach's alpha (KR-20 for items 0 and 1) and what goes with it.
 *
 * <p>alpha = k / (k - 1) (1 - sum of item variances / variance of the sum), variances with divisor n - 1. Input: n
 * persons x k items without gaps, both at least 2. It is at most 1 and may be negative. An item without variance stays
 * in (dropping it would change alpha) and has no correlation. A variance of the sum of 1e-14 of that of its items or
 * less is rounding: the sums do not vary. Values above .9 may be one level for all items rather than quality. Accuracy
 * about 1e-13.
 *
 * <p>Cronbach, Psychometrika 1951;16:297, doi:10.1007/BF02310555; Kuder and Richardson, Psychometrika 1937;2:151,
 * doi:10.1007/BF02288391.
 */
public final class CronbachAlpha {
    private final double[][] covariance;
    private final double[] itemMeans;
    private final int items;

    private CronbachAlpha(double[][] scores) {
        Require.table("The table of items", scores, 2, 2);
        items = scores[0].length;
        int persons = scores.length;
        itemMeans = new double[items];
        double[][] centred = new double[items][persons];
        for (int i = 0; i < items; i++) {
            double origin = scores[0][i];
            for (int p = 0; p < persons; p++) {
                centred[i][p] = scores[p][i] - origin;
            }
            double mean = Arrays.stream(centred[i]).average().orElse(0);
            itemMeans[i] = origin + mean;
            for (int p = 0; p < persons; p++) {
                centred[i][p] -= mean;
            }
        }
        covariance = new double[items][items];
        for (int i = 0; i < items; i++) {
            for (int j = 0; j < items; j++) {
                for (int p = 0; p < persons; p++) {
                    covariance[i][j] += centred[i][p] * centred[j][p] / (persons - 1);
                }
            }
        }
    }

    /**
     * The study of a table.
     *
     * @param scores persons x items, at least 2 of each
     * @return the study
     * @throws IllegalArgumentException when the table is too small, not rectangular or holds something that is no
     *     number
     */
    public static CronbachAlpha of(double[][] scores) {
        return new CronbachAlpha(scores);
    }

    /** {@return the number of items} */
    public int items() {
        return items;
    }

    /** {@return the coefficient; empty when the sums do not vary} */
    public OptionalDouble alpha() {
        return alpha(-1);
    }

    /**
     * {@return the coefficient without one item; empty when fewer than two items remain or their sums do not vary}
     *
     * @param item counted from 0
     * @throws IndexOutOfBoundsException when there is no such item
     */
    public OptionalDouble alphaWithout(int item) {
        return alpha(Objects.checkIndex(item, items));
    }

    private OptionalDouble alpha(int without) {
        double k = without < 0 ? items : items - 1.0;
        double total = 0;
        double own = 0;
        for (int i = 0; i < items; i++) {
            for (int j = 0; j < items; j++) {
                total += i == without || j == without ? 0 : covariance[i][j];
            }
            own += i == without ? 0 : covariance[i][i];
        }
        return k < 2 || total <= 1e-14 * own ? OptionalDouble.empty() : Ratio.of(k * (total - own), (k - 1) * total);
    }

    /** {@return the mean of the correlations of any two items, -1 to 1; empty when an item does not vary} */
    public OptionalDouble meanCorrelation() {
        double sum = 0;
        for (int i = 0; i < items; i++) {
            for (int j = 0; j < i; j++) {
                sum += covariance[i][j] / Math.sqrt(covariance[i][i] * covariance[j][j]);
            }
        }
        return Ratio.finite(2 * sum / (items * (items - 1.0)));
    }

    /**
     * {@return alpha of items brought to equal variance, k r / (1 + (k - 1) r) with r the mean correlation; empty when
     * an item does not vary or the denominator is 0}
     */
    public OptionalDouble standardised() {
        OptionalDouble r = meanCorrelation();
        return r.isEmpty() ? r : Ratio.of(items * r.getAsDouble(), 1 + (items - 1) * r.getAsDouble());
    }

    /**
     * {@return the correlation of an item with the sum of the others, -1 to 1; empty when either does not vary}
     *
     * @param item counted from 0
     * @throws IndexOutOfBoundsException when there is no such item
     */
    public OptionalDouble itemRestCorrelation(int item) {
        double withRest = IntStream.range(0, items)
                .filter(j -> j != item)
                .mapToDouble(j -> covariance[item][j])
                .sum();
        double rest = totalVariance() - 2 * withRest - covariance[item][item];
        return rest <= 1e-14 * totalVariance()
                ? OptionalDouble.empty()
                : Ratio.of(withRest, Math.sqrt(covariance[item][item] * rest));
    }

    /** {@return the mean of the sums} */
    public double totalMean() {
        return Arrays.stream(itemMeans).sum();
    }

    /** {@return the variance of the sums, divisor n - 1} */
    public double totalVariance() {
        return Arrays.stream(covariance).flatMapToDouble(Arrays::stream).sum();
    }

    /** {@return the standard error of measurement of a sum, sqrt(variance (1 - alpha)); empty with alpha} */
    public OptionalDouble standardErrorOfMeasurement() {
        OptionalDouble alpha = alpha();
        return alpha.isEmpty()
                ? alpha
                : OptionalDouble.of(Math.sqrt(Math.max(0, totalVariance() * (1 - alpha.getAsDouble()))));
    }

    /**
     * {@return KR-21, k / (k - 1) (1 - m (k - m) / (k variance)) with m the mean of the sums, for items 0 and 1 taken
     * as equally difficult (not checked); empty when the sums do not vary}
     */
    public OptionalDouble kr21() {
        double mean = totalMean();
        double k = items;
        return alpha().isEmpty()
                ? OptionalDouble.empty()
                : Ratio.finite(k / (k - 1) * (1 - mean * (k - mean) / (k * totalVariance())));
    }
}
