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

/** {@link Kernels} under JMH, on a quiet machine; {@link CurveBenchmark} prints the same by CPU time. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class KernelBenchmark {

    private final Kernels kernels = new Kernels();

    @Benchmark
    public double scoreKernel() {
        return kernels.scoreKernel();
    }

    @Benchmark
    public double forward() {
        return kernels.forward();
    }

    @Benchmark
    public double sweep() {
        return kernels.sweep();
    }

    @Benchmark
    public double valueAtTheMode() {
        return kernels.valueAtTheMode();
    }

    @Benchmark
    public double valueAndGradientAtTheMode() {
        return kernels.valueAndGradientAtTheMode();
    }
}
