package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;

/**
 * Measures the engine on one thread: {@code java -cp ... CurveBenchmark [scores [large]]}: one programme (unless
 * {@code large}), then a hundredth, a tenth and all of so many scores. Prints medians of the thread's CPU time after
 * warm-up. Live bytes are the heap after a collection, table and solution held, beyond what the machine needs itself;
 * run with {@code -Xmx} of 64 MB plus 64 bytes a score to see that it fits.
 */
public final class CurveBenchmark {

    private static final int WARM = 10;
    private static final int ROUNDS = 11;
    private static final int STEPS = 22;
    private static final int REPEATS = 50;

    /** Written to, so that no work counts as unused. */
    @SuppressWarnings("UnusedVariable") // that it is never read is its purpose
    private static volatile double kept;

    private CurveBenchmark() {}

    public static void main(String[] args) {
        int scores = args.length > 0 ? Integer.parseInt(args[0]) : 1_000_000;
        if (args.length < 2) {
            programme();
            kernels();
        }
        for (int size : new int[] {scores / 100, scores / 10, scores}) {
            large(size);
        }
        print(
                "heap limit %d MB, 64 MB + 64 B a score = %d MB",
                Runtime.getRuntime().maxMemory() >> 20, 64 + (64L * scores >> 20));
    }

    private static void programme() {
        ScoreTable table = SimulatedProgramme.usual().table();
        ModelSettings settings = ModelSettings.standard(SimulatedProgramme.LEVELS);
        Psi shipped = Psi.shipped(SimulatedProgramme.LEVELS, table.steps().size(), 3);
        PopulationFit[] fit = new PopulationFit[1];
        double whole = CpuTime.median(
                WARM,
                ROUNDS,
                () -> fit[0] = new PopulationFitter(table, settings, Workers.ONE).fit(shipped, Estimation.ALL));
        print(
                "full fit of one programme, %d scores, %d parameters: %.0f ms",
                table.scores(), new PsiLayout(table, Terms.FULL, true, true).size, whole);
        ProcedureStandard standard = ProcedureStandard.usual(SimulatedProgramme.CRITICAL);
        String longest = table.trainees().get(longest(table));
        double signOff = CpuTime.median(WARM, ROUNDS, () -> {
            for (int i = 0; i < 20; i++) {
                CompetencyModel.smooth(fit[0], table, longest, standard);
            }
        });
        print(
                "one sign-off, trainee with %d cases, curve, chances and three forecasts: %.2f ms",
                cases(table, longest(table)), signOff / 20);
        double mode = CpuTime.median(WARM, ROUNDS, () -> {
            for (int i = 0; i < 20; i++) {
                SmoothedTrainee.of(fit[0], table, longest);
            }
        });
        print("  of which smoothing with covariances: %.2f ms", mode / 20);
        double running = CpuTime.median(WARM, ROUNDS, () -> RunningPath.of(fit[0], table, longest));
        print("case-by-case update, one assessment: %.3f ms", running / cases(table, longest(table)));
    }

    private static void kernels() {
        Kernels kernels = new Kernels();
        double value = kernel("likelihood at the mode", kernels, kernels::valueAtTheMode);
        double both = kernel("likelihood with gradient at the mode", kernels, kernels::valueAndGradientAtTheMode);
        print("  so the gradient alone: %.0f ns a score", both - value);
        kernel("one Newton sweep", kernels, kernels::sweep);
        kernel("its likelihoods and factors", kernels, kernels::forward);
        kernel("its likelihoods, residuals and weights", kernels, kernels::scoreKernel);
    }

    private static double kernel(String name, Kernels kernels, DoubleSupplier work) {
        double time = CpuTime.median(WARM, ROUNDS, () -> {
            for (int i = 0; i < REPEATS; i++) {
                kept = work.getAsDouble();
            }
        });
        double each = time * 1e6 / REPEATS / kernels.scores();
        print("%s: %.1f ns a score", name, each);
        return each;
    }

    private static int longest(ScoreTable table) {
        int best = 0;
        for (int t = 0; t < table.trainees().size(); t++) {
            best = cases(table, t) > cases(table, best) ? t : best;
        }
        return best;
    }

    private static int cases(ScoreTable table, int trainee) {
        return table.caseStart[trainee + 1] - table.caseStart[trainee];
    }

    private static void large(int scores) {
        long before = live();
        ScoreTable table = table(scores);
        Psi shipped = Psi.shipped(SimulatedProgramme.LEVELS, STEPS, 3);
        ModelSettings settings = ModelSettings.standard(SimulatedProgramme.LEVELS);
        List<PopulationFit> fits = new ArrayList<>();
        double time = CpuTime.median(1, Math.max(2, Math.min(51, 4_000_000 / scores)), () -> {
            fits.clear();
            fits.add(new PopulationFitter(table, settings, Workers.ONE).fit(shipped, Estimation.GIVEN));
        });
        print(
                "%d scores, %d trainees, parameters given, effects from 0: %.0f ms, %.0f ns a score, %.1f live bytes a score",
                table.scores(),
                table.trainees().size(),
                time,
                time * 1e6 / table.scores(),
                (double) (live() - before) / table.scores());
        print("  log-likelihood %.6f", fits.get(0).logLikelihood());
    }

    /** Programmes of 14 trainees and 9 supervisors, 65 cases each, about 19 of 22 steps seen. */
    private static ScoreTable table(int scores) {
        List<String> steps = IntStream.range(0, STEPS)
                .mapToObj(i -> String.format("S%02d", i))
                .toList();
        ScoreTableBuilder builder = new ScoreTableBuilder(SimulatedProgramme.LEVELS, steps, List.of());
        Random random = new Random(5);
        int made = 0;
        for (int p = 0; made < scores; p++) {
            for (int t = 0; t < 14 && made < scores; t++) {
                double start = -1.4 + 0.5 * random.nextGaussian();
                for (int i = 0; i < 65; i++) {
                    List<Double> x = List.of(random.nextInt(2) * 1.0, 0.0, 0.0);
                    CaseContext context = new CaseContext("c" + i, i, i, 0, x);
                    String assessment = p + "-" + t + "-" + i;
                    double level = start + 4 * -Math.expm1(-i / 20.0) + 0.5 * random.nextGaussian();
                    String supervisor = "p" + p + "v" + random.nextInt(9);
                    for (String step : steps) {
                        if (random.nextInt(22) < 19) {
                            double l = level + Math.log(1 / random.nextDouble() - 1);
                            int y = l > 3.1 ? 5 : l > 1 ? 4 : l > -0.3 ? 3 : l > -1.9 ? 2 : 1;
                            builder.add(new ObservedScore(assessment, "p" + p + "t" + t, supervisor, context, step, y));
                            made++;
                        }
                    }
                }
            }
        }
        return builder.build();
    }

    private static long live() {
        long least = Long.MAX_VALUE;
        for (int i = 0; i < 3; i++) {
            System.gc();
            Runtime runtime = Runtime.getRuntime();
            least = Math.min(least, runtime.totalMemory() - runtime.freeMemory());
        }
        return least;
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
