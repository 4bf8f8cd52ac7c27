package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;

/**
 * {@code statistic METHOD FILE.json [--out FILE]}: one statistic from a JSON file {@code {"data": {...}}}, printed as a
 * flat JSON object of keys and numbers. A statistic that is undefined is null and {@code "note"} says why; an unknown
 * method, an unreadable file and data that cannot be used end with one sentence on the error stream and exit code 2.
 */
@Command(
        name = "statistic",
        separator = " ",
        description = "One statistic from a JSON file {\"data\": {...}}, printed as a flat JSON object.")
final class StatisticCommand implements Callable<Integer> {

    /** From the data of the file to the flat result. */
    interface Method {
        void apply(StatisticData data, StatisticResult result);
    }

    @SuppressWarnings("NullAway.Init") // required, so the parser fills it
    @Parameters(index = "0", paramLabel = "METHOD", description = "one of the methods below")
    private String method;

    @SuppressWarnings("NullAway.Init") // required, so the parser fills it
    @Parameters(index = "1", paramLabel = "FILE.json", description = "its data")
    private Path file;

    @Option(names = "--out", paramLabel = "FILE", description = "result file (default: standard output)")
    private Optional<Path> out = Optional.empty();

    private final Terminal terminal;
    private final ObjectMapper json = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    private StatisticCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** Its parser, whose help lists the methods. */
    static CommandLine parser(Terminal terminal) {
        CommandLine parser = new CommandLine(new StatisticCommand(terminal));
        parser.getCommandSpec()
                .usageMessage()
                .footer("", "Methods: " + String.join(", ", methods().keySet()));
        return parser;
    }

    /** Every method by its name, in alphabetical order. */
    static Map<String, Method> methods() {
        Map<String, Method> methods = new TreeMap<>();
        AgreementMethods.addTo(methods);
        ConsistencyMethods.addTo(methods);
        GeneralizabilityMethods.addTo(methods);
        ControlMethods.addTo(methods);
        IntervalMethods.addTo(methods);
        EstimateMethods.addTo(methods);
        ComparisonMethods.addTo(methods);
        OrdinalMethods.addTo(methods);
        return methods;
    }

    @Override
    public Integer call() {
        try {
            String text = evaluate();
            out.ifPresentOrElse(
                    target -> write(target, text), () -> terminal.out().println(text));
            return Commands.FINE;
        } catch (IllegalArgumentException unusable) {
            terminal.err().println(unusable.getMessage());
            return Commands.WRONG_USE;
        }
    }

    private static void write(Path target, String text) {
        try {
            Files.writeString(target, text + System.lineSeparator());
        } catch (IOException unreachable) {
            throw new IllegalArgumentException("The file " + target + " cannot be written.", unreachable);
        }
    }

    private String evaluate() {
        Method known = methods().get(method);
        if (known == null) {
            throw new IllegalArgumentException("There is no method named " + method + "; --help lists them.");
        }
        StatisticResult result = new StatisticResult();
        known.apply(data(), result);
        Map<String, @Nullable Object> values = new LinkedHashMap<>(result.values());
        return json.writerWithDefaultPrettyPrinter().writeValueAsString(values);
    }

    private StatisticData data() {
        JsonNode root;
        try {
            root = json.readTree(Files.readString(file));
        } catch (JacksonException malformed) {
            throw new IllegalArgumentException(
                    "The file " + file + " is not JSON: " + malformed.getOriginalMessage(), malformed);
        } catch (IOException unreachable) {
            throw new IllegalArgumentException("The file " + file + " cannot be read.", unreachable);
        }
        JsonNode data = root.path("data");
        if (!data.isObject()) {
            throw new IllegalArgumentException("The file " + file + " has no object named \"data\".");
        }
        return new StatisticData(data);
    }
}
