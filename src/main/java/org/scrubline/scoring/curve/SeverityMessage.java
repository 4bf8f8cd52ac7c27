package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What everybody else's scores say about the severities of the supervisors one trainee met, and about the mean of the
 * panel. The trainee's own share is taken out first: smoothing with this law gives exactly the joint solution as long
 * as the trainee's scores have not changed, and never counts a score twice after they have.
 */
final class SeverityMessage {

    final SeverityPrior prior;

    /** Mean and variance of the panel's mean severity, and its regression on the supervisors met. */
    final double panelMean;

    final double panelVariance;
    final double[] panelRegression;

    private SeverityMessage(Collector c) {
        prior = SeverityPrior.of(c.mean, c.covariance);
        panelMean = c.panelMean;
        panelVariance = c.panelVariance;
        panelRegression = new double[c.mean.length];
        Dense.multiply(prior.precision(), c.mean.length, c.panelCovariance, panelRegression);
    }

    /** @param met ids of the supervisors met, in the order of the trainee's columns */
    static SeverityMessage of(PopulationFit fit, String trainee, List<String> met) {
        Collector collector = new Collector(fit, met);
        fit.groups().forEach(group -> collector.add(group, trainee));
        return new SeverityMessage(collector);
    }

    /** Panel mean and its covariances once the trainee's own scores are counted. */
    Panel panel(double[] severity, double[] covariance) {
        int n = severity.length;
        double mean = panelMean;
        double variance = panelVariance;
        double[] shared = new double[n];
        Dense.multiply(covariance, n, panelRegression, shared);
        for (int v = 0; v < n; v++) {
            mean += panelRegression[v] * (severity[v] - prior.mean()[v]);
        }
        double[] before = prior.precision().clone();
        Dense.cholesky(before, n);
        double[] priorCovariance = Dense.inverse(before, n, 0);
        variance += Dense.dot(panelRegression, 0, shared, 0, n)
                - Dense.form(panelRegression, priorCovariance, panelRegression, n);
        return new Panel(mean, Math.max(variance, 0), shared);
    }

    /** Mean severity of the panel, its variance, and its covariance with the severities of the supervisors met. */
    @SuppressWarnings("ArrayRecordComponent") // internal to the kernels, never compared or exposed
    record Panel(double mean, double variance, double[] covariance) {}

    private static final class Collector {
        private final List<String> met;
        private final int panel;
        final double[] mean;
        final double[] covariance;
        final double[] panelCovariance;
        double panelMean;
        double panelVariance;

        Collector(PopulationFit fit, List<String> met) {
            this.met = met;
            panel = Math.max(fit.supervisors().size(), 1);
            int n = met.size();
            mean = new double[n];
            covariance = new double[n * n];
            panelCovariance = new double[n];
            double unknown = Math.max(fit.psi().severitySd() * fit.psi().severitySd(), 1e-8);
            for (int v = 0; v < n; v++) {
                covariance[v * n + v] = unknown;
            }
        }

        void add(SeverityGroup group, String trainee) {
            Optional<SeverityGroup.Share> share = group.shares().stream()
                    .filter(s -> s.trainee().equals(trainee))
                    .findFirst();
            List<Integer> columns = new ArrayList<>();
            List<Integer> places = new ArrayList<>();
            for (int v = 0; v < met.size(); v++) {
                int place = group.supervisors().indexOf(met.get(v));
                if (place >= 0) {
                    columns.add(v);
                    places.add(place);
                }
            }
            if (share.isEmpty() && columns.isEmpty()) {
                group.severity().forEach(severity -> panelMean += severity / panel);
                panelVariance += group.covarianceSum() / panel / panel;
            } else {
                add(group, share, columns, places);
            }
        }

        private void add(
                SeverityGroup group, Optional<SeverityGroup.Share> share, List<Integer> columns, List<Integer> places) {
            int size = group.supervisors().size();
            double[] others = PsiLayout.array(group.precision());
            double[] pull = new double[size];
            share.ifPresent(s -> takeOut(s, size, others, pull));
            Dense.cholesky(others, size);
            double[] v = Dense.inverse(others, size, 0);
            double[] severity = PsiLayout.array(group.severity());
            double[] shift = new double[size];
            Dense.multiply(v, size, pull, shift);
            for (int i = 0; i < size; i++) {
                severity[i] -= shift[i];
                panelMean += severity[i] / panel;
                for (int j = 0; j < size; j++) {
                    panelVariance += v[i * size + j] / panel / panel;
                }
            }
            place(severity, v, size, columns, places);
        }

        private void place(double[] severity, double[] v, int size, List<Integer> columns, List<Integer> places) {
            int n = met.size();
            for (int a = 0; a < columns.size(); a++) {
                int row = places.get(a) * size;
                mean[columns.get(a)] = severity[places.get(a)];
                for (int b = 0; b < columns.size(); b++) {
                    covariance[columns.get(a) * n + columns.get(b)] = v[row + places.get(b)];
                }
                double sum = 0;
                for (int j = 0; j < size; j++) {
                    sum += v[row + j];
                }
                panelCovariance[columns.get(a)] = sum / panel;
            }
        }

        private static void takeOut(SeverityGroup.Share share, int size, double[] precision, double[] pull) {
            int met = share.supervisors().size();
            for (int v = 0; v < met; v++) {
                int row = share.supervisors().get(v);
                pull[row] = share.pull().get(v);
                for (int w = 0; w < met; w++) {
                    precision[row * size + share.supervisors().get(w)] -=
                            share.information().get(v * met + w);
                }
            }
        }
    }
}
