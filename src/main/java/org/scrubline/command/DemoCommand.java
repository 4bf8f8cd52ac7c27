package org.scrubline.command;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.DemoRubrics;
import org.scrubline.demo.plan.PlanCsv;
import org.scrubline.demo.plan.PlanScores;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.scoring.curve.ObservedScore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code demo --scores FILE}: the signed scores of the invented programme, as {@code curves} reads them. */
@Command(
        name = "demo",
        separator = " ",
        sortOptions = false,
        description = "Writes the signed scores of the invented programme for one procedure, to be read by curves.",
        footer = "The server with this programme: scrubline --spring.profiles.active=demo"
                + " [--scrubline.demo.scale=K] [--scrubline.demo.seed=N] [--scrubline.demo.begin=DATE].")
final class DemoCommand implements Callable<Integer> {

    private final Terminal terminal;

    @SuppressWarnings("NullAway.Init") // required, so the parser fills it
    @Option(names = "--scores", required = true, paramLabel = "FILE", description = "the file to write")
    private Path scores;

    @Option(names = "--procedure", paramLabel = "CODE", description = "default ${DEFAULT-VALUE}")
    private String procedure = Procedures.TRAB_FORNIX;

    @Option(names = "--scale", paramLabel = "K", description = "1 is 900 cases (default), at most 10")
    private double scale = 1;

    @Option(names = "--seed", paramLabel = "N", description = "another seed, another history")
    private long seed = DemoPlan.USUAL_SEED;

    @Option(
            names = "--begin",
            paramLabel = "DATE",
            description = "first day of the 24 months, default ${DEFAULT-VALUE}")
    private LocalDate begin = LocalDate.of(2024, 9, 1);

    DemoCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (!Procedures.ALL.contains(procedure)) {
            throw new WrongUse("There is no procedure " + procedure + "; there are " + Procedures.ALL + ".");
        }
        try {
            write(DemoPlan.draw(seed, begin, scale, new DemoRubrics(RubricLibrary.shipped())));
            return Commands.FINE;
        } catch (IllegalArgumentException problem) {
            throw new WrongUse(String.valueOf(problem.getMessage()));
        } catch (IOException problem) {
            terminal.err().println("demo: cannot write " + scores + ": " + problem.getMessage());
            return Commands.WRONG_USE;
        }
    }

    private void write(DemoPlan plan) throws IOException {
        try (Writer writer = Files.newBufferedWriter(scores)) {
            writer.write(PlanCsv.header());
            for (ObservedScore score : PlanScores.of(plan, procedure)) {
                writer.write(PlanCsv.line(score));
            }
        }
    }
}
