package org.scrubline.command;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What the server would take too.
 *
 * @param lines as {@code --name=value}
 * @param environment variables, for what the line does not say
 */
record ServerSettings(List<String> lines, Map<String, String> environment) {

    /** @throws WrongUse when a line is none of the server's settings */
    ServerSettings {
        for (String line : lines) {
            if (!line.matches("--(scrubline|spring)\\.[^=]+=.*")) {
                throw new WrongUse("There is no option " + line + ".");
            }
        }
        lines = List.copyOf(lines);
    }

    /** One setting, from the line or the environment; an empty one counts as none. */
    Optional<String> one(String name) {
        String variable = name.toUpperCase(Locale.ROOT).replace('.', '_');
        String start = "--" + name + "=";
        return lines.stream()
                .filter(line -> line.startsWith(start))
                .map(line -> line.substring(start.length()))
                .findFirst()
                .or(() -> Optional.ofNullable(environment.get(variable.replace("-", ""))))
                .or(() -> Optional.ofNullable(environment.get(variable.replace('-', '_'))))
                .filter(value -> !value.isEmpty());
    }
}
