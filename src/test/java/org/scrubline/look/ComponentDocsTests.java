package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Keeps docs/components.md at one with the components; {@code -Dscrubline.docs.write=true} writes it anew. */
class ComponentDocsTests {

    private static final Path PAGE = Path.of("docs/components.md");
    private static final String INTRODUCTION = """
            # Components
            The parts every page is made of. Each is one fragment in `templates/components`, called with all its parameters by name:

            ```html
            <div th:replace="~{components/empty-state :: empty-state(title=#{cases.none}, text=#{cases.none.why}, href=null, label=null)}"></div>
            ```

            Where a parameter is a list or a record, any object with properties of those names will do. `th:replace` acts before
            `th:each` and `th:if`: put those on an element around it. Named examples live in `src/test/resources/components`; they drive
            the render tests, the accessibility tests and this page, which `mvn test -Dtest=ComponentDocsTests -Dscrubline.docs.write=true` writes.

            A page stands on the layout like this (the first line keeps browsers in standards mode):

            ```html
            <!DOCTYPE html>
            <html xmlns:th="http://www.thymeleaf.org"
                  th:replace="~{layout/page :: page(title=#{cases.title}, nav='cases', content=~{::main}, caution='curve', scripts=${ {'/js/stepper.js'} })}">
            <main> … </main>
            </html>
            ```

            A score sheet stands in one form: its phases with only the first unfinished one open, then the verdict bar. It asks for
            `/js/stepper.js` (the buttons beside a measure) and `/js/phases.js` (live counts; the next phase opens when one is complete);
            both are a help, the sheet works without them.

            """;

    @Test
    void thePageListsEveryComponentAsItIs() throws IOException {
        String current = INTRODUCTION
                + Component.all().stream().map(ComponentDocsTests::section).collect(Collectors.joining("\n"));
        if (Boolean.getBoolean("scrubline.docs.write")) {
            Files.createDirectories(PAGE.getParent());
            Files.writeString(PAGE, current);
        }
        assertThat(PAGE).content().isEqualTo(current);
    }

    @Test
    void everyExampleNamesExactlyTheParametersTheCommentLists() {
        assertThat(Component.all())
                .allSatisfy(component -> assertThat(component.examples())
                        .allSatisfy(example -> assertThat(example.with().keySet())
                                .as(component.name() + ": " + example.name())
                                .containsExactlyInAnyOrderElementsOf(component.parameters().stream()
                                        .map(Component.Parameter::name)
                                        .toList())));
    }

    private static String section(Component component) {
        String rows = component.parameters().stream()
                .map(parameter -> "| `%s` | %s |\n".formatted(parameter.name(), parameter.meaning()))
                .collect(Collectors.joining());
        String examples =
                component.examples().stream().map(Component.Example::name).collect(Collectors.joining("; "));
        return "## %s\n%s\n\n| parameter | takes |\n|---|---|\n%s\nExamples: %s.\n"
                .formatted(component.name(), capital(component.description()), rows, examples);
    }

    private static String capital(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
