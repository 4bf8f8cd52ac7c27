package org.scrubline.command;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.LevelStandard;
import org.scrubline.scoring.curve.ModelSettings;
import org.scrubline.scoring.curve.PopulationFit;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.scoring.curve.Psi;

/**
 * {@code curves}: fits the competency model to a score file and writes curves as JSON. Exit codes: 0 done, 2 wrong use
 * or unusable files, with a sentence on the error stream. The same input gives the same bytes.
 */
public final class CurvesCommand {

    private static final int DONE = 0;
    private static final int WRONG_USE = 2;

    /**
     * Runs the command.
     *
     * @param args options after the command's name; see {@code --help}
     * @param out standard output
     * @param err messages
     * @return exit code
     */
    public int run(List<String> args, PrintStream out, PrintStream err) {
        if (args.contains("--help")) {
            out.print(CurvesOptions.USAGE);
            return DONE;
        }
        try {
            run(CurvesOptions.parse(args), out);
            return DONE;
        } catch (CurvesProblem | IllegalArgumentException e) {
            err.println("curves: " + e.getMessage());
            return WRONG_USE;
        } catch (IOException e) {
            err.println("curves: cannot write the result: " + e.getMessage());
            return WRONG_USE;
        }
    }

    private static void run(CurvesOptions options, PrintStream out) throws IOException {
        CurvesConfig config = CurvesConfig.read(options.config());
        CurvesScores scores = CurvesScores.read(options.scores(), config);
        Psi start = config.parameters()
                .psi(scores.stepOrder(), scores.table().steps(), scores.table().covariates());
        ModelSettings settings = new ModelSettings(
                config.terms(),
                config.kappa(),
                config.range(),
                config.halo(),
                config.parameters().priors());
        CompetencyModel model = new CompetencyModel(settings);
        PopulationFit fit = model.fit(scores.table(), start, config.estimation());
        Map<String, List<Double>> gradient = options.gradient() ? model.gradient(scores.table(), fit) : Map.of();
        CurvesReport report = new CurvesReport(scores, fit, standard(config, scores), config.standard(), gradient);
        if (options.out().isPresent()) {
            write(report, options.out().get(), options);
        } else {
            report.write(out, options.pictures());
            out.println();
        }
    }

    private static void write(CurvesReport report, Path file, CurvesOptions options) throws IOException {
        try (OutputStream stream = Files.newOutputStream(file)) {
            report.write(stream, options.pictures());
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
