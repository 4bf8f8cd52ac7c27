package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The options of a command that works on an installation: {@code --name VALUE}, and the server's own settings as
 * {@code --scrubline.…=VALUE} or {@code --spring.…=VALUE}, which are also read from the environment.
 */
final class Options {

    private final Map<String, List<String>> values = new HashMap<>();
    private final Map<String, String> environment;

    /**
     * Reads a line.
     *
     * @param known names of the options the command has
     * @throws IllegalArgumentException when the line has another one, or one without a value; the message says so
     */
    Options(List<String> args, Set<String> known, Map<String, String> environment) {
        this.environment = environment;
        for (int at = 0; at < args.size(); at++) {
            String arg = args.get(at);
            int equals = arg.indexOf('=');
            if (arg.matches("--(scrubline|spring)\\..*=.*")) {
                add(arg.substring(2, equals), arg.substring(equals + 1));
            } else if (arg.startsWith("--") && known.contains(arg.substring(2)) && at + 1 < args.size()) {
                add(arg.substring(2), args.get(++at));
            } else {
                throw new IllegalArgumentException("There is no option " + arg + ", or its value is missing.");
            }
        }
    }

    private void add(String name, String value) {
        values.computeIfAbsent(name, key -> new ArrayList<>()).add(value);
    }

    List<String> all(String name) {
        return values.getOrDefault(name, List.of());
    }

    Optional<String> one(String name) {
        return all(name).stream().findFirst();
    }

    /** A setting of the server, from the line or the environment. */
    Optional<String> setting(String name) {
        String variable = name.toUpperCase(Locale.ROOT).replace('.', '_').replace("-", "");
        return one(name)
                .or(() -> Optional.ofNullable(environment.get(variable)))
                .or(() -> Optional.ofNullable(environment.get(
                        name.toUpperCase(Locale.ROOT).replace('.', '_').replace('-', '_'))))
                .filter(value -> !value.isEmpty());
    }

    /** The text of each file an option names. */
    List<String> texts(String name) {
        return all(name).stream().map(Options::text).toList();
    }

    static String text(String file) {
        try {
            return Files.readString(path(file));
        } catch (IOException unreadable) {
            throw new IllegalArgumentException("The file " + file + " cannot be read.", unreadable);
        }
    }

    static Path path(String file) {
        try {
            return Path.of(file);
        } catch (InvalidPathException noPath) {
            throw new IllegalArgumentException("The file " + file + " cannot be read.", noPath);
        }
    }
}
