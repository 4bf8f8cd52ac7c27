package org.scrubline.scoring.ordinal;

import java.util.Arrays;
import org.scrubline.scoring.QuasiNewton;

/** The deviance of the many-facet model on a grid of abilities, with its gradient. */
final class FacetLikelihood implements QuasiNewton.Objective {
    private static final double REACH = 8;

    private final FacetDesign design;
    private final double[] standardNodes;
    private final double[] logWeights;

    FacetLikelihood(FacetDesign design, int nodes) {
        this.design = design;
        standardNodes = new double[nodes];
        logWeights = new double[nodes];
        double spacing = 2 * REACH / (nodes - 1);
        for (int q = 0; q < nodes; q++) {
            standardNodes[q] = -REACH + q * spacing;
            logWeights[q] = Math.log(spacing / Math.sqrt(2 * Math.PI)) - standardNodes[q] * standardNodes[q] / 2;
        }
    }

    @Override
    public double value(double[] at, double[] gradient) {
        Arrays.fill(gradient, 0);
        int nodes = standardNodes.length;
        double[][][] logProbability = logProbabilities(at);
        double[][] expectedCount = new double[design.combinations()][nodes];
        double[] scoreSum = new double[design.combinations()];
        double[] reached = new double[design.steps() + 1];
        double[] pull = new double[nodes];
        double deviance = 0;
        for (int[][] ratings : design.persons) {
            double[] posterior = logWeights.clone();
            for (int[] rating : ratings) {
                double[][] own = logProbability[rating[0]];
                for (int q = 0; q < nodes; q++) {
                    posterior[q] += own[q][rating[1]];
                }
                scoreSum[rating[0]] += rating[1];
                for (int k = 1; k <= rating[1]; k++) {
                    reached[k]++;
                }
            }
            deviance -= 2 * normalise(posterior);
            for (int[] rating : ratings) {
                for (int q = 0; q < nodes; q++) {
                    expectedCount[rating[0]][q] += posterior[q];
                    pull[q] += posterior[q] * rating[1];
                }
            }
        }
        addGradient(at, gradient, logProbability, expectedCount, scoreSum, reached, pull);
        return deviance;
    }

    /** Turns log values into shares that sum to 1; returns the logarithm of their sum. */
    private static double normalise(double[] logs) {
        double top = Arrays.stream(logs).max().orElse(0);
        double sum = 0;
        for (int q = 0; q < logs.length; q++) {
            logs[q] = Math.exp(logs[q] - top);
            sum += logs[q];
        }
        for (int q = 0; q < logs.length; q++) {
            logs[q] /= sum;
        }
        return top + Math.log(sum);
    }

    private double[][][] logProbabilities(double[] at) {
        double deviation = Math.exp(at[at.length - 1]);
        double[][][] table = new double[design.combinations()][standardNodes.length][design.steps() + 1];
        for (int c = 0; c < table.length; c++) {
            double difficulty = at[design.itemOf(c)] + design.severity(at, design.raterOf(c));
            for (int q = 0; q < standardNodes.length; q++) {
                double[] logs = table[c][q];
                double top = 0;
                for (int k = 1; k < logs.length; k++) {
                    logs[k] = logs[k - 1] + deviation * standardNodes[q] - difficulty - design.step(at, k);
                    top = Math.max(top, logs[k]);
                }
                double sum = 0;
                for (double log : logs) {
                    sum += Math.exp(log - top);
                }
                double total = top + Math.log(sum);
                for (int k = 0; k < logs.length; k++) {
                    logs[k] -= total;
                }
            }
        }
        return table;
    }

    /** What the data have in excess of the model, for each kind of parameter. */
    private void addGradient(
            double[] at,
            double[] gradient,
            double[][][] logProbability,
            double[][] expectedCount,
            double[] scoreSum,
            double[] reached,
            double[] pull) {
        double deviation = Math.exp(at[at.length - 1]);
        double[] byRater = new double[design.raters().size()];
        double byDeviation = 0;
        for (int q = 0; q < pull.length; q++) {
            byDeviation += pull[q] * standardNodes[q] * deviation;
        }
        for (int c = 0; c < scoreSum.length; c++) {
            double surplus = scoreSum[c];
            for (int q = 0; q < pull.length; q++) {
                double expected = 0;
                double atLeast = 0;
                for (int k = design.steps(); k >= 1; k--) {
                    atLeast += Math.exp(logProbability[c][q][k]);
                    expected += expectedCount[c][q] * atLeast;
                    reached[k] -= expectedCount[c][q] * atLeast;
                }
                surplus -= expected;
                byDeviation -= expected * standardNodes[q] * deviation;
            }
            gradient[design.itemOf(c)] += 2 * surplus;
            byRater[design.raterOf(c)] += 2 * surplus;
        }
        for (int r = 0; r < byRater.length - 1; r++) {
            gradient[design.items().size() + r] = byRater[r] - byRater[byRater.length - 1];
        }
        for (int k = 1; k < design.steps(); k++) {
            gradient[design.firstStep() + k - 1] = 2 * (reached[k] - reached[design.steps()]);
        }
        gradient[gradient.length - 1] = -2 * byDeviation;
    }
}
