package org.scrubline.look;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Which message keys there are, and which of them templates and Java name, whole or by their beginning. */
final class MessageKeys {

    private static final Pattern WHOLE = Pattern.compile("#\\{([a-z][\\w.-]*)[}(]");
    private static final Pattern BEGINNING = Pattern.compile("#\\{\\$\\{'([a-z][\\w.-]*)' ?\\+");
    private static final Pattern JAVA_LITERAL = Pattern.compile("\"([a-z][\\w-]*\\.[\\w.-]*)\"");

    private MessageKeys() {}

    /** The keys of every message file. */
    static Set<String> defined() {
        Properties all = new Properties();
        for (Path file : files(Path.of("src/main/resources/messages"), ".properties")) {
            try (Reader reader = Files.newBufferedReader(file)) {
                all.load(reader);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return new TreeSet<>(all.stringPropertyNames());
    }

    /** Whole keys in this template's text. */
    static Set<String> named(String template) {
        return groups(WHOLE, template);
    }

    /** Beginnings of keys that a template completes with a value. */
    static Set<String> begun(String template) {
        return groups(BEGINNING, template);
    }

    /** True for a key that some template or Java source names, whole or by its beginning. */
    static Predicate<String> used(List<Templates.Template> templates) {
        String pages = templates.stream().map(Templates.Template::text).collect(Collectors.joining("\n"));
        Set<String> whole = named(pages);
        Set<String> begun = begun(pages);
        for (Path source : files(Path.of("src/main/java"), ".java")) {
            Set<String> literals = groups(JAVA_LITERAL, text(source));
            whole.addAll(literals);
            literals.stream().filter(literal -> literal.endsWith(".")).forEach(begun::add);
        }
        return key -> whole.contains(key) || begun.stream().anyMatch(key::startsWith);
    }

    private static Set<String> groups(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map((MatchResult result) -> result.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static List<Path> files(Path root, String ending) {
        try (Stream<Path> files = Files.walk(root)) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
