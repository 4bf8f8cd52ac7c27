package org.scrubline.rubric;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NoSuchElementException;
import org.scrubline.rubric.format.CodeListReader;
import org.scrubline.rubric.format.RubricReader;

/**
 * The rubrics and code lists shipped with the product, read from {@code /rubrics} on the class path. Every clinical
 * value is a default to be confirmed by a local glaucoma lead before use.
 *
 * @param rubrics one for each of {@link Procedures#ALL}, in that order
 * @param events the events a sheet can record
 * @param complexity the complexity factors
 * @param sources what the source keys stand for
 */
public record RubricLibrary(
        List<Rubric> rubrics, EventCatalogue events, ComplexityFactors complexity, Sources sources) {

    public RubricLibrary {
        rubrics = List.copyOf(rubrics);
    }

    /** Reads the shipped files; a fault in them is a fault of the build and names file, step and key. */
    public static RubricLibrary shipped() {
        Map<String, String> files = new LinkedHashMap<>();
        for (String procedure : Procedures.ALL) {
            String file = procedure.toLowerCase(Locale.ROOT).replace('_', '-') + ".yaml";
            files.put(file, text(file));
        }
        return new RubricLibrary(
                new RubricReader(files).read(),
                CodeListReader.events("events.yaml", text("events.yaml")),
                CodeListReader.complexity("complexity.yaml", text("complexity.yaml")),
                CodeListReader.sources("sources.yaml", text("sources.yaml")));
    }

    /**
     * The shipped rubric of a procedure.
     *
     * @throws NoSuchElementException when the library has none
     */
    public Rubric rubric(String procedure) {
        return rubrics.stream()
                .filter(rubric -> rubric.procedure().equals(procedure))
                .findFirst()
                .orElseThrow(() -> new NoSuchElementException("No shipped rubric for " + procedure));
    }

    private static String text(String file) {
        try (InputStream in = RubricLibrary.class.getResourceAsStream("/rubrics/" + file)) {
            if (in == null) {
                throw new IllegalStateException("The build lacks rubrics/" + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
