package org.scrubline.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;

/**
 * {@code statistic METHOD FILE.json [--out FILE]}: one statistic from a JSON file {@code {"data": {...}}}, printed as a
 * flat JSON object of keys and numbers. A statistic that is undefined is null and {@code "note"} says why; data that
 * cannot be used end with one sentence on the error stream.
 */
public final class StatisticCommand {
    /** Exit code of a result. */
    public static final int FINE = 0;

    /** Exit code of wrong use: unknown method, unreadable file, unusable data. */
    public static final int WRONG_USE = 2;

    private static final String USAGE = "Usage: statistic METHOD FILE.json [--out FILE]";

    /** From the data of the file to the flat result. */
    interface Method {
        void apply(StatisticData data, StatisticResult result);
    }

    private final Map<String, Method> methods = new TreeMap<>();
    private final ObjectMapper json = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    /** The command with every method it knows. */
    public StatisticCommand() {
        AgreementMethods.addTo(methods);
        ConsistencyMethods.addTo(methods);
        GeneralizabilityMethods.addTo(methods);
        ControlMethods.addTo(methods);
        IntervalMethods.addTo(methods);
        EstimateMethods.addTo(methods);
        ComparisonMethods.addTo(methods);
        OrdinalMethods.addTo(methods);
    }

    /** Names of all methods, in alphabetical order. */
    public List<String> methodNames() {
        return List.copyOf(methods.keySet());
    }

    /**
     * Runs the command.
     *
     * @param args METHOD and FILE, then {@code --out FILE} if wanted; {@code --help} lists the methods
     * @param out receives the result
     * @param err receives one sentence when there is none
     * @return {@link #FINE} or {@link #WRONG_USE}
     */
    public int run(List<String> args, PrintStream out, PrintStream err) {
        if (args.contains("--help")) {
            out.println(USAGE);
            out.println("Methods: " + String.join(", ", methods.keySet()));
            return FINE;
        }
        try {
            String text = evaluate(args);
            if (args.size() == 4) {
                write(args.get(3), text);
            } else {
                out.println(text);
            }
            return FINE;
        } catch (IllegalArgumentException unusable) {
            err.println(unusable.getMessage());
            return WRONG_USE;
        }
    }

    private static void write(String file, String text) {
        try {
            Files.writeString(Path.of(file), text + System.lineSeparator());
        } catch (IOException | InvalidPathException unreachable) {
            throw new IllegalArgumentException("The file " + file + " cannot be written.", unreachable);
        }
    }

    private String evaluate(List<String> args) {
        boolean toFile = args.size() == 4 && args.get(2).equals("--out");
        if (args.size() != 2 && !toFile) {
            throw new IllegalArgumentException(USAGE);
        }
        Method method = methods.get(args.get(0));
        if (method == null) {
            throw new IllegalArgumentException("There is no method named " + args.get(0) + "; --help lists them.");
        }
        StatisticResult result = new StatisticResult();
        method.apply(data(args.get(1)), result);
        Map<String, @Nullable Object> values = new LinkedHashMap<>(result.values());
        return json.writerWithDefaultPrettyPrinter().writeValueAsString(values);
    }

    private StatisticData data(String file) {
        JsonNode root;
        try {
            root = json.readTree(Files.readString(Path.of(file)));
        } catch (JacksonException malformed) {
            throw new IllegalArgumentException(
                    "The file " + file + " is not JSON: " + malformed.getOriginalMessage(), malformed);
        } catch (IOException | InvalidPathException unreachable) {
            throw new IllegalArgumentException("The file " + file + " cannot be read.", unreachable);
        }
        JsonNode data = root.path("data");
        if (!data.isObject()) {
            throw new IllegalArgumentException("The file " + file + " has no object named \"data\".");
        }
        return new StatisticData(data);
    }
}
