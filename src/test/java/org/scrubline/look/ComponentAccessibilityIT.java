package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.scrubline.browser.Axe;

class ComponentAccessibilityIT {

    private static final List<ColorScheme> SCHEMES = List.of(ColorScheme.LIGHT, ColorScheme.DARK);
    private static final List<Integer> WIDTHS = List.of(360, 1280);

    @TestFactory
    Stream<DynamicTest> everyComponentKeepsTheGuidelinesInBothThemesAndWidths() {
        return Component.all().stream()
                .flatMap(component -> SCHEMES.stream()
                        .flatMap(scheme -> WIDTHS.stream()
                                .map(width -> DynamicTest.dynamicTest(
                                        component.name() + ", " + scheme + ", " + width + " px",
                                        () -> check(component, scheme, width)))));
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
