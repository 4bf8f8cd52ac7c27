package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.scrubline.browser.Axe;

class ComponentAccessibilityIT {

    /** Colours hang on the theme and sizes on the width, so the two diagonal pairs see all four values. */
    private static final Map<ColorScheme, Integer> VIEWS = Map.of(ColorScheme.LIGHT, 360, ColorScheme.DARK, 1280);

    /** One window for each view: opening one took longer than the check. */
    private static final Map<ColorScheme, Gallery> GALLERIES = new EnumMap<>(ColorScheme.class);

    @BeforeAll
    static void open() {
        VIEWS.forEach((scheme, width) -> GALLERIES.put(scheme, new Gallery(width, 800, scheme)));
    }

    @AfterAll
    static void close() {
        GALLERIES.values().forEach(Gallery::close);
    }

    @TestFactory
    Stream<DynamicTest> everyComponentKeepsTheGuidelinesInBothThemesAndAtBothWidths() {
        return Component.all().stream()
                .flatMap(component -> VIEWS.entrySet().stream()
                        .map(view -> DynamicTest.dynamicTest(
                                component.name() + ", " + view.getKey() + ", " + view.getValue() + " px",
                                () -> check(component, GALLERIES.get(view.getKey())))));
    }

    private static void check(Component component, Gallery gallery) {
        int before = gallery.complaints().size();
        try (Page page = gallery.show(component.name(), Rendering.page(component))) {
            page.evaluate("() => document.querySelectorAll('details').forEach(part => part.open = true)");
            Axe.assertNoViolations(page);
            assertThat(gallery.complaints())
                    .as("console of %s", component.name())
                    .hasSize(before);
        }
    }
}
