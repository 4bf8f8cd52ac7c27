package org.scrubline.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.LevelStandard;
import org.scrubline.scoring.curve.ModelSettings;
import org.scrubline.scoring.curve.PopulationFit;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.scoring.curve.Psi;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * {@code curves}: fits the competency model to a score file and writes curves as JSON. Exit codes: 0 done, 2 wrong use
 * or unusable files, with a sentence on the error stream. The same input gives the same bytes.
 */
@Command(
        name = "curves",
        separator = " ",
        description = "Fits the competency model to a score file and writes curves as JSON.",
        sortOptions = false)
final class CurvesCommand implements Callable<Integer> {

    @SuppressWarnings("NullAway.Init") // required, so the parser fills it
    @Option(
            names = "--scores",
            required = true,
            paramLabel = "FILE",
            description = "CSV, one row per observed step score")
    private Path scores;

    @SuppressWarnings("NullAway.Init") // required, so the parser fills it
    @Option(
            names = "--config",
            required = true,
            paramLabel = "FILE",
            description = "JSON: levels, steps, supervisors, terms, parameters, standard")
    private Path config;

    @Option(names = "--gradient", description = "also the derivatives of the log-likelihood at the parameters used")
    private boolean gradient;

    @Option(names = "--out", paramLabel = "FILE", description = "result file (default: standard output)")
    private Optional<Path> out = Optional.empty();

    @Option(names = "--svg", paramLabel = "DIR", description = "also one picture a trainee")
    private Optional<Path> pictures = Optional.empty();

    private final Terminal terminal;

    CurvesCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        try {
            write(report());
            return Commands.FINE;
        } catch (CurvesProblem | IllegalArgumentException e) {
            terminal.err().println("curves: " + e.getMessage());
            return Commands.WRONG_USE;
        } catch (IOException e) {
            terminal.err().println("curves: cannot write the result: " + e.getMessage());
            return Commands.WRONG_USE;
        }
    }

    private CurvesReport report() {
        CurvesConfig model = CurvesConfig.read(config);
        CurvesScores rows = CurvesScores.read(scores, model);
        Psi start = model.parameters()
                .psi(rows.stepOrder(), rows.table().steps(), rows.table().covariates());
        CompetencyModel competency = new CompetencyModel(new ModelSettings(
                model.terms(),
                model.kappa(),
                model.range(),
                model.halo(),
                model.parameters().priors()));
        PopulationFit fit = competency.fit(rows.table(), start, model.estimation());
        Map<String, List<Double>> slopes = gradient ? competency.gradient(rows.table(), fit) : Map.of();
        return new CurvesReport(rows, fit, standard(model, rows), model.standard(), slopes);
    }

    private void write(CurvesReport report) throws IOException {
        if (out.isEmpty()) {
            report.write(terminal.out(), pictures);
            terminal.out().println();
            return;
        }
        try (OutputStream stream = Files.newOutputStream(out.get())) {
            report.write(stream, pictures);
            stream.write('\n');
        }
    }

    /** The usual standards that the scale of this file can hold. */
    private static ProcedureStandard standard(CurvesConfig config, CurvesScores scores) {
        for (String code : config.criticalSteps()) {
            if (!scores.table().steps().contains(code)) {
                throw new CurvesProblem("critical step " + code + " is not among the steps "
                        + scores.table().steps());
            }
        }
        ProcedureStandard usual = ProcedureStandard.usual(config.criticalSteps());
        List<LevelStandard> levels = usual.levels().stream()
                .filter(level -> level.level() <= config.levels())
                .toList();
        return new ProcedureStandard(
                usual.criticalSteps(),
                config.standard(),
                usual.stepChance(),
                usual.assurance(),
                levels,
                usual.minimums(),
                usual.pending());
    }
}
