package org.scrubline.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/**
 * The options of {@code curves}.
 *
 * @param scores score file
 * @param config model and standard
 * @param out result file, else standard output
 * @param pictures directory for one picture a trainee
 * @param gradient also print the gradient
 */
record CurvesOptions(Path scores, Path config, Optional<Path> out, Optional<Path> pictures, boolean gradient) {

    static final String USAGE = """
            curves --scores FILE --config FILE [--gradient] [--out FILE] [--svg DIR]
            Fits the competency model to a score file and writes curves as JSON.
              --scores FILE   CSV, one row per observed step score
              --config FILE   JSON: levels, steps, supervisors, terms, parameters, standard
              --gradient      also the derivatives of the log-likelihood at the parameters used
              --out FILE      result file (default: standard output)
              --svg DIR       also one picture a trainee
            """;

    static CurvesOptions parse(List<String> args) {
        Optional<Path> scores = Optional.empty();
        Optional<Path> config = Optional.empty();
        Optional<Path> out = Optional.empty();
        Optional<Path> pictures = Optional.empty();
        boolean gradient = false;
        for (Iterator<String> i = args.iterator(); i.hasNext(); ) {
            String option = i.next();
            switch (option) {
                case "--scores" -> scores = Optional.of(path(option, i));
                case "--config" -> config = Optional.of(path(option, i));
                case "--out" -> out = Optional.of(path(option, i));
                case "--svg" -> pictures = Optional.of(path(option, i));
                case "--gradient" -> gradient = true;
                default -> throw new CurvesProblem("unknown option " + option + "\n" + USAGE);
            }
        }
        return new CurvesOptions(
                scores.orElseThrow(() -> new CurvesProblem("--scores is missing\n" + USAGE)),
                config.orElseThrow(() -> new CurvesProblem("--config is missing\n" + USAGE)),
                out,
                pictures,
                gradient);
    }

    private static Path path(String option, Iterator<String> rest) {
        if (!rest.hasNext()) {
            throw new CurvesProblem(option + " needs a file\n" + USAGE);
        }
        String name = rest.next();
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new CurvesProblem(option + ": " + name + " is not a usable file name");
        }
    }
}
