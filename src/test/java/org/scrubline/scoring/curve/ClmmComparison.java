package org.scrubline.scoring.curve;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/**
 * The static part of the model, fitted to one seeded programme by this engine and by R's {@code ordinal::clmm}: same
 * scores, same machine, same run, CPU time of each. R takes some minutes; it needs the package {@code ordinal}.
 *
 * <p>{@code java -cp ... ClmmComparison folder script}; ends with status 1 when the log-likelihoods differ by more than
 * 1e-3 or R is not at least 300 times as slow.
 */
public final class ClmmComparison {

    private static final double LARGEST_DIFFERENCE = 1e-3;
    private static final double LEAST_RATIO = 300;
    private static final int LONGEST_MINUTES = 30;
    private static final int ROUNDS = 11;
    private static final Terms STATIC = new Terms(false, false, false, false, false, true);

    private ClmmComparison() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        SimulatedProgramme programme = SimulatedProgramme.usual();
        Path csv = Files.writeString(folder.resolve("scores.csv"), csv(programme.scores));
        ScoreTable table = programme.table();
        long before = processCpu();
        double value = fit(table).logLikelihood();
        double cold = (processCpu() - before) / 1e9;
        double warm = CpuTime.median(ROUNDS, ROUNDS, () -> fit(table)) / 1000;
        print("scores %d, log-likelihood %.6f", table.scores(), value);
        print("engine: %.3f CPU s warmed up, %.3f CPU s first fit of a new JVM with its compiler", warm, cold);
        Map<String, String> clmm = clmm(csv, Path.of(args[1]), folder.resolve("clmm.txt"));
        double cpu = Double.parseDouble(clmm.get("cpu"));
        double difference = Math.abs(Double.parseDouble(clmm.get("loglik")) - value);
        print("%s: %.1f CPU s, log-likelihood %s", clmm.get("version"), cpu, clmm.get("loglik"));
        print("difference of log-likelihoods %.1e", difference);
        print("ratio of CPU times %.0f warmed up, %.0f for the first fit", cpu / warm, cpu / cold);
        System.exit(difference <= LARGEST_DIFFERENCE && cpu / warm >= LEAST_RATIO ? 0 : 1);
    }

    private static PopulationFit fit(ScoreTable table) {
        ModelSettings settings = new ModelSettings(STATIC, 20, false, false, PsiPriors.none());
        Psi start = Psi.shipped(SimulatedProgramme.LEVELS, table.steps().size(), 3);
        return new PopulationFitter(table, settings, Workers.ONE).fit(start, Estimation.ALL);
    }

    private static String csv(List<ObservedScore> scores) {
        return scores.stream()
                .map(s -> String.format(
                        Locale.ROOT,
                        "%s,%s,%s,%s,%s,%d",
                        s.assessment(),
                        s.trainee(),
                        s.supervisor(),
                        s.context().complexity().stream().map(String::valueOf).collect(Collectors.joining(",")),
                        s.step(),
                        s.lowest()))
                .collect(Collectors.joining("\n", "assessment,trainee,supervisor,x1,x2,x3,step,y\n", "\n"));
    }

    /** What the script prints: the first word of each line is its name. */
    private static Map<String, String> clmm(Path csv, Path script, Path out) throws IOException, InterruptedException {
        Process process = new ProcessBuilder("Rscript", script.toString(), csv.toString())
                .redirectErrorStream(true)
                .redirectOutput(out.toFile())
                .start();
        if (!process.waitFor(LONGEST_MINUTES, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IllegalStateException("clmm took more than " + LONGEST_MINUTES + " minutes");
        }
        String printed = Files.readString(out);
        if (process.exitValue() != 0) {
            throw new UncheckedIOException(new IOException("clmm failed: " + printed));
        }
        Map<String, String> values = new TreeMap<>();
        printed.lines()
                .map(line -> line.split(" ", 2))
                .filter(line -> line.length == 2)
                .forEach(line -> {
                    values.put(line[0], line[1].strip());
                });
        return values;
    }

    private static long processCpu() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
