package org.scrubline.scoring.curve;

/** The inner loops of the fit over one whole programme, one thread; divide by {@link #scores} for the cost of one. */
final class Kernels {

    private final ScoreTable table = SimulatedProgramme.usual().table();
    private final PsiLayout layout = new PsiLayout(table, Terms.FULL, true, true);
    private final Psi psi = Psi.shipped(SimulatedProgramme.LEVELS, table.steps().size(), 3);
    private final double[] vector = layout.vector(psi);
    private final double[] gradient = new double[layout.size];
    private final ModelPoint point =
            new ModelPoint(layout.psi(vector), 20, table.supervisors().size());
    private final ProgrammeLikelihood likelihood =
            new ProgrammeLikelihood(table, layout, PsiPriors.defaults(SimulatedProgramme.LEVELS), 20, Workers.ONE);
    private final JointSolution solution = likelihood.groups.get(0);

    Kernels() {
        likelihood.evaluate(vector, gradient);
    }

    int scores() {
        return table.scores();
    }

    /** Likelihood, residual and weight of every score. */
    double scoreKernel() {
        double sum = 0;
        for (TraineeWork trainee : solution.trainees) {
            trainee.lay(point, solution.severity);
            trainee.logLikelihood = 0;
            for (int i = 0; i < trainee.cases; i++) {
                int first = table.assessmentStart[trainee.caseOffset + i] - trainee.assessmentOffset;
                int end = table.assessmentStart[trainee.caseOffset + i + 1] - trainee.assessmentOffset;
                for (int j = first; j < end; j++) {
                    trainee.thresholds(point, i, j);
                    sum += TraineeSweep.scores(trainee, j);
                }
            }
            sum += trainee.logLikelihood;
        }
        return sum;
    }

    /** The same with the factor of every trainee. */
    double forward() {
        double sum = 0;
        for (TraineeWork trainee : solution.trainees) {
            TraineeSweep.forward(trainee, point, solution.severity);
            sum += trainee.logLikelihood;
        }
        return sum;
    }

    /** One whole Newton sweep: forward, the severities' joint step, and back to every effect. */
    double sweep() {
        forward();
        solution.step(true);
        double largest = 0;
        for (TraineeWork trainee : solution.trainees) {
            TraineeSweep.back(trainee, solution.severityStep);
            largest = Math.max(largest, trainee.largestStep);
        }
        return largest;
    }

    /** The likelihood at its mode: the sweep that finds nothing left to move. */
    double valueAtTheMode() {
        return likelihood.evaluate(vector, new double[0]);
    }

    /** The same with the exact gradient by all population parameters. */
    double valueAndGradientAtTheMode() {
        return likelihood.evaluate(vector, gradient);
    }
}
