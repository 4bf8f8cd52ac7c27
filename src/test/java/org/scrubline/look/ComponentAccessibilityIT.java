package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.scrubline.browser.Axe;

class ComponentAccessibilityIT {

    /** Colours hang on the theme and sizes on the width, so the two diagonal pairs see all four values. */
    private static final Map<ColorScheme, Integer> VIEWS = Map.of(ColorScheme.LIGHT, 360, ColorScheme.DARK, 1280);

    @TestFactory
    Stream<DynamicTest> everyComponentKeepsTheGuidelinesInBothThemesAndAtBothWidths() {
        return Component.all().stream()
                .flatMap(component -> VIEWS.entrySet().stream()
                        .map(view -> DynamicTest.dynamicTest(
                                component.name() + ", " + view.getKey() + ", " + view.getValue() + " px",
                                () -> check(component, view.getKey(), view.getValue()))));
    }

    private static void check(Component component, ColorScheme scheme, int width) {
        try (Gallery gallery = new Gallery(width, 800, scheme)) {
            Page page = gallery.show(component.name(), Rendering.page(component));
            page.evaluate("() => document.querySelectorAll('details').forEach(part => part.open = true)");
            Axe.assertNoViolations(page);
            assertThat(gallery.complaints())
                    .as("console of %s", component.name())
                    .isEmpty();
        }
    }
}
