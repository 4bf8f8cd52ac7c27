package org.scrubline.look;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** A file of {@code templates/components} with its head comment and its named examples. */
record Component(String name, String description, List<Parameter> parameters, List<Example> examples) {

    private static final Path TEMPLATES = Path.of("src/main/resources/templates/components");
    private static final Path EXAMPLES = Path.of("src/test/resources/components");
    private static final Pattern HEAD = Pattern.compile("(?s)\\A<!--/\\*\\s*(\\S+): (.*?)\\*/-->");
    private static final Pattern PARAMETER = Pattern.compile("^  (\\S+)  +(.*)$");
    private static final YAMLMapper YAML = new YAMLMapper();

    /** One parameter of the fragment and what it takes. */
    record Parameter(String name, String meaning) {}

    /**
     * One use of a component.
     *
     * @param with values of the parameters; a text starting with {@code ~{} is a fragment
     * @param wrap markup round the fragment with {@code {}} in its place, for parts that cannot stand alone
     * @param has XPath expressions that must find something in the result
     * @param hasNot XPath expressions that must find nothing
     */
    record Example(
            String name,
            Map<String, @Nullable Object> with,
            @Nullable String wrap,
            List<String> has,
            @Nullable List<String> hasNot) {}

    /** All components, by name. */
    static List<Component> all() {
        try (Stream<Path> files = Files.list(TEMPLATES)) {
            return files.map(file -> file.getFileName().toString().replace(".html", ""))
                    .sorted()
                    .map(Component::read)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Component read(String name) {
        try {
            Matcher head = HEAD.matcher(Files.readString(TEMPLATES.resolve(name + ".html")));
            if (!head.find() || !head.group(1).equals(name)) {
                throw new IllegalStateException(name + ".html does not start with a comment that names it");
            }
            String[] lines = head.group(2).split("\n");
            Example[] examples = YAML.readValue(EXAMPLES.resolve(name + ".yaml").toFile(), Example[].class);
            return new Component(name, lines[0], parameters(lines), List.of(examples));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Parameter> parameters(String[] lines) {
        List<Parameter> found = new ArrayList<>();
        for (String line : lines) {
            Matcher parameter = PARAMETER.matcher(line);
            if (parameter.matches()) {
                found.add(new Parameter(parameter.group(1), parameter.group(2)));
            } else if (line.startsWith("   ") && !found.isEmpty()) {
                Parameter last = found.remove(found.size() - 1);
                found.add(new Parameter(last.name(), last.meaning() + "<br>" + line.strip()));
            }
        }
        return List.copyOf(found);
    }
}
