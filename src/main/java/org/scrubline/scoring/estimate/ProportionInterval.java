package org.scrubline.scoring.estimate;

import static org.scrubline.scoring.Distributions.betaQuantile;
import static org.scrubline.scoring.Distributions.twoSidedZ;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Require;

/**
 * Two-sided intervals of a proportion {@code x / n}, x successes among n independent cases of one probability.
 *
 * <p>Every method takes {@code 0 <= x <= n}, {@code n >= 0} and a confidence strictly between 0 and 1, and throws an
 * {@link IllegalArgumentException} with a sentence otherwise. With n = 0 nothing is known and each method answers 0 to
 * 1. All but {@link #wald} and {@link #agrestiCoull} stay inside 0 to 1; those two are given as their formulas have
 * them, unclipped, so that the aberration can be seen. Failures instead of successes mirror every interval. Closed
 * forms are exact to rounding, quantiles to about 1e-14. In the formulas p = x / n and z is the normal quantile of the
 * confidence.
 *
 * <p>References: Wilson, J Am Stat Assoc 1927;22:209, doi:10.1080/01621459.1927.10502953; Clopper and Pearson,
 * Biometrika 1934;26:404, doi:10.1093/biomet/26.4.404; Newcombe, Stat Med 1998;17:857,
 * doi:10.1002/(SICI)1097-0258(19980430)17:8&lt;857::AID-SIM777&gt;3.0.CO;2-E (mid-P, continuity correction, comparison
 * of seven methods); Agresti and Coull, Am Stat 1998;52:119, doi:10.1080/00031305.1998.10480550; Brown, Cai and
 * DasGupta, Stat Sci 2001;16:101, doi:10.1214/ss/1009213286 (Jeffreys with its limits at 0 and n).
 */
public final class ProportionInterval {
    private static final Interval NOTHING_KNOWN = new Interval(0, 1);

    private ProportionInterval() {}

    /**
     * Wilson's score interval: all p that the score test at this level does not reject, (x + z² / 2 ± z sqrt(x (n - x)
     * / n + z² / 4)) / (n + z²). The lower limit is exactly 0 at x = 0, the upper exactly 1 at x = n. The product's
     * default.
     *
     * @param successes x, 0 to n
     * @param n cases, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits inside 0 to 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval wilson(int successes, int n, double confidence) {
        if (nothingKnown(successes, n, confidence)) {
            return NOTHING_KNOWN;
        }
        double z = twoSidedZ(confidence);
        double centre = (successes + z * z / 2) / (n + z * z);
        double half = z * Math.sqrt((double) successes * (n - successes) / n + z * z / 4) / (n + z * z);
        return new Interval(successes == 0 ? 0 : centre - half, successes == n ? 1 : centre + half);
    }

    /**
     * Wilson's interval with continuity correction (Newcombe's method 4), low = (2 x + z² - 1 - z sqrt(z² - 2 - 1 / n +
     * 4 p (n - x + 1))) / (2 (n + z²)), not below 0, high its mirror; 0 and 1 at the ends. Never narrower than
     * Wilson's.
     *
     * @param successes x, 0 to n
     * @param n cases, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits inside 0 to 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval wilsonContinuityCorrected(int successes, int n, double confidence) {
        if (nothingKnown(successes, n, confidence)) {
            return NOTHING_KNOWN;
        }
        double z = twoSidedZ(confidence);
        return new Interval(
                successes == 0 ? 0 : correctedLower(successes, n, z),
                successes == n ? 1 : 1 - correctedLower(n - successes, n, z));
    }

    private static double correctedLower(int successes, int n, double z) {
        double p = (double) successes / n;
        double root = Math.sqrt(z * z - 2 - 1.0 / n + 4 * p * (n - successes + 1));
        return Math.max(0, (2.0 * successes + z * z - 1 - z * root) / (2 * (n + z * z)));
    }

    /**
     * The exact interval: each limit leaves at most half of the error probability in its binomial tail, by quantiles of
     * the beta distributions (x, n - x + 1) and (x + 1, n - x); 0 and 1 at the ends. It covers at least the confidence,
     * usually more.
     *
     * @param successes x, 0 to n
     * @param n cases, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits inside 0 to 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval clopperPearson(int successes, int n, double confidence) {
        if (nothingKnown(successes, n, confidence)) {
            return NOTHING_KNOWN;
        }
        double tail = (1 - confidence) / 2;
        return new Interval(
                successes == 0 ? 0 : betaQuantile(tail, successes, n - successes + 1.0),
                successes == n ? 1 : betaQuantile(1 - tail, successes + 1.0, n - successes));
    }

    /**
     * The exact interval with half of the observed result's probability in each tail: low is the p with P(X &gt; x) +
     * P(X = x) / 2 = (1 - confidence) / 2, by bisection, high its mirror; 0 and 1 at the ends.
     *
     * <p>The lower limit is sought below x / n, the upper above. For a confidence under about .1 a solution may lie on
     * the other side, and the limit is then x / n itself.
     *
     * @param successes x, 0 to n
     * @param n cases, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits inside 0 to 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval midP(int successes, int n, double confidence) {
        if (nothingKnown(successes, n, confidence)) {
            return NOTHING_KNOWN;
        }
        double tail = (1 - confidence) / 2;
        return new Interval(
                successes == 0 ? 0 : midPLower(successes, n, tail),
                successes == n ? 1 : 1 - midPLower(n - successes, n, tail));
    }

    private static double midPLower(int successes, int n, double tail) {
        DoubleUnaryOperator excess = p -> {
            BinomialDistribution binomial = BinomialDistribution.of(n, p);
            return binomial.survivalProbability(successes) + binomial.probability(successes) / 2 - tail;
        };
        return Distributions.root(excess, 0, (double) successes / n);
    }

    /**
     * The normal approximation, p ± z sqrt(p (1 - p) / n); zero width at 0 and n, and limits that may leave 0 to 1. For
     * comparison only.
     *
     * @param successes x, 0 to n
     * @param n cases, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits around p; 0 to 1 when n = 0
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval wald(int successes, int n, double confidence) {
        if (nothingKnown(successes, n, confidence)) {
            return NOTHING_KNOWN;
        }
        double p = (double) successes / n;
        double half = twoSidedZ(confidence) * Math.sqrt(p * (1 - p) / n);
        return new Interval(p - half, p + half);
    }

    /**
     * Equal tails of the posterior under Jeffreys' prior, quantiles of the beta distribution (x + 1/2, n - x + 1/2);
     * the lower limit is 0 at x = 0, the upper 1 at x = n.
     *
     * @param successes x, 0 to n
     * @param n cases, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits inside 0 to 1
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval jeffreys(int successes, int n, double confidence) {
        if (nothingKnown(successes, n, confidence)) {
            return NOTHING_KNOWN;
        }
        double tail = (1 - confidence) / 2;
        double a = successes + 0.5;
        double b = n - successes + 0.5;
        return new Interval(
                successes == 0 ? 0 : betaQuantile(tail, a, b), successes == n ? 1 : betaQuantile(1 - tail, a, b));
    }

    /**
     * The normal approximation after adding z² / 2 successes and as many failures; may leave 0 to 1. Its middle is that
     * of Wilson's interval, its width never less.
     *
     * @param successes x, 0 to n
     * @param n cases, 0 or more
     * @param confidence strictly between 0 and 1
     * @return limits around (x + z² / 2) / (n + z²); 0 to 1 when n = 0
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static Interval agrestiCoull(int successes, int n, double confidence) {
        if (nothingKnown(successes, n, confidence)) {
            return NOTHING_KNOWN;
        }
        double z = twoSidedZ(confidence);
        double total = n + z * z;
        double p = (successes + z * z / 2) / total;
        double half = z * Math.sqrt(p * (1 - p) / total);
        return new Interval(p - half, p + half);
    }

    private static boolean nothingKnown(int successes, int n, double confidence) {
        Require.atLeast("The number of cases", n, 0);
        Require.that(
                successes >= 0 && successes <= n,
                "The number of successes must lie from 0 to %s, but is %s.",
                n,
                successes);
        Require.insideUnit("The confidence", confidence);
        return n == 0;
    }
}
