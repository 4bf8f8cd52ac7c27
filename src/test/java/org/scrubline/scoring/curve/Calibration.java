package org.scrubline.scoring.curve;

import java.util.Locale;

/** Said against true, in bins of what was said. */
final class Calibration {

    private final int bins;
    private final int[] count;
    private final double[] said;
    private final double[] found;

    Calibration(int bins) {
        this.bins = bins;
        count = new int[bins];
        said = new double[bins];
        found = new double[bins];
    }

    void add(double chance, double truth) {
        int b = Math.min(bins - 1, (int) (chance * bins));
        count[b]++;
        said[b] += chance;
        found[b] += truth;
    }

    /** Largest distance of said and true among bins with at least so many entries. */
    double worst(int least) {
        double worst = 0;
        for (int b = 0; b < bins; b++) {
            worst = count[b] >= least ? Math.max(worst, Math.abs(said[b] - found[b]) / count[b]) : worst;
        }
        return worst;
    }

    /** How far said lies above true at most, less two standard errors, among bins with at least so many entries. */
    double mostOptimistic(int least) {
        double worst = -1;
        for (int b = 0; b < bins; b++) {
            if (count[b] >= least) {
                double p = found[b] / count[b];
                double error = Math.sqrt(Math.max(p * (1 - p), 0) / count[b]);
                worst = Math.max(worst, said[b] / count[b] - p - 2 * error);
            }
        }
        return worst;
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        for (int b = 0; b < bins; b++) {
            if (count[b] > 0) {
                double p = found[b] / count[b];
                text.append(String.format(
                        Locale.ROOT,
                        "  said %.3f  true %.3f  (n %d, at most se %.3f)%n",
                        said[b] / count[b],
                        p,
                        count[b],
                        Math.sqrt(Math.max(p * (1 - p), 0) / count[b])));
            }
        }
        return text.toString();
    }
}
