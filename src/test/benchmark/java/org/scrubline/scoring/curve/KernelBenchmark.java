package org.scrubline.scoring.curve;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The inner loops of the fit over one whole programme, one thread. Divide by the scores for the cost of one. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class KernelBenchmark {

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

    public KernelBenchmark() {
        likelihood.evaluate(vector, gradient);
    }

    /** Likelihood, first and second derivatives of every score, and the factor of every trainee. */
    @Benchmark
    public double forward() {
        double sum = 0;
        for (TraineeWork trainee : solution.trainees) {
            TraineeSweep.forward(trainee, point, solution.severity);
            sum += trainee.logLikelihood;
        }
        return sum;
    }

    /** One whole Newton sweep: forward, the severities' joint step, and back to every effect. */
    @Benchmark
    public double sweep() {
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
    @Benchmark
    public double valueAtTheMode() {
        return likelihood.evaluate(vector, new double[0]);
    }

    /** The same with the exact gradient by all population parameters. */
    @Benchmark
    public double valueAndGradientAtTheMode() {
        return likelihood.evaluate(vector, gradient);
    }
}
