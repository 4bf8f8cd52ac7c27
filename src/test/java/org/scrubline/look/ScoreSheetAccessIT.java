package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ForcedColors;
import com.microsoft.playwright.options.Media;
import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.browser.Axe;

/** The score sheet within reach of everybody; the criteria are those of WCAG 2.2, named beside the checks. */
class ScoreSheetAccessIT {

    private static final String NONE_WIDER =
            "() => document.documentElement.scrollWidth <= document.documentElement.clientWidth";

    /** Names of visible controls smaller than the given side; text links in a sentence are not controls here. */
    private static final String TOO_SMALL = """
            ([selector, side]) => [...document.querySelectorAll(selector)]
              .filter(part => part.checkVisibility())
              .map(part => [part, part.getBoundingClientRect()])
              .filter(([part, box]) => box.width < side || box.height < side)
              .map(([part, box]) => `${part.outerHTML.slice(0, 90)} ${box.width} x ${box.height}`)
            """;

    /** Steps through the focus order; the middle of what has focus must not lie under something else. */
    private static final String COVERED = """
            () => {
              const part = document.activeElement, box = part.getBoundingClientRect();
              const x = box.left + box.width / 2, y = box.top + Math.min(box.height, innerHeight) / 2;
              const top = document.elementFromPoint(x, y);
              const free = top && (part.contains(top) || top.contains(part) || part.closest('label')?.contains(top));
              return free ? '' : part.outerHTML.slice(0, 90) + ' under ' + top?.outerHTML.slice(0, 60);
            }
            """;

    @ParameterizedTest
    @CsvSource({"360, 640", "768, 1024"})
    void everythingToPressIsAFingerWide(int width, int height) {
        try (Gallery gallery = new Gallery(width, height, ColorScheme.LIGHT)) {
            Page page = ScoreSheetSketch.open(gallery);
            // 2.5.5 (44 px) on the sheet itself, 2.5.8 (24 px) round it.
            String sheet =
                    "main .level, main .state, main .stepper button, main .stepper input, main summary, main .button";
            assertThat((List<?>) page.evaluate(TOO_SMALL, List.of(sheet, width < 600 ? 44 : 24)))
                    .isEmpty();
            assertThat((List<?>) page.evaluate(TOO_SMALL, List.of(".level, .state, main .button", 44)))
                    .isEmpty();
            assertThat((List<?>) page.evaluate(TOO_SMALL, List.of("a:not(.skip), button, summary", 24)))
                    .isEmpty();
        }
    }

    @Test
    void nothingThatHasFocusIsCoveredByTheHeadingOrTheFoot() {
        try (Gallery gallery = new Gallery(360, 640, ColorScheme.LIGHT)) {
            Page page = ScoreSheetSketch.open(gallery);
            // 2.4.11, and 2.1.2: the walk ends at the page's end. A radio group is one stop.
            int stops = 0;
            for (; stops < 200; stops++) {
                page.keyboard().press("Tab");
                if ((boolean) page.evaluate("() => document.activeElement === document.body")) {
                    break;
                }
                assertThat((String) page.evaluate(COVERED)).isEmpty();
            }
            assertThat(stops).isBetween(40, 199);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {320, 360, 640, 1280})
    void thePageNeverScrollsSideways(int width) {
        try (Gallery gallery = new Gallery(width, 640, ColorScheme.LIGHT)) {
            // 1.4.10; 640 px is also 1280 px at 200 % zoom (1.4.4).
            assertThat((boolean) ScoreSheetSketch.open(gallery).evaluate(NONE_WIDER))
                    .isTrue();
        }
    }

    @Test
    void widerLetterAndLineSpacingLosesNothing() {
        try (Gallery gallery = new Gallery(360, 640, ColorScheme.LIGHT)) {
            Page page = ScoreSheetSketch.open(gallery);
            // 1.4.12, its four values.
            page.evaluate("""
                    () => document.querySelectorAll('body *').forEach(part => Object.assign(part.style, {
                      lineHeight: '1.5', letterSpacing: '.12em', wordSpacing: '.16em' }))""");
            assertThat((boolean) page.evaluate(NONE_WIDER)).isTrue();
            assertThat((List<?>) page.evaluate("""
                            () => [...document.querySelectorAll('.cell, .state span, .button')]
                              .filter(part => part.checkVisibility() && part.scrollHeight > part.clientHeight + 2)
                              .map(part => part.textContent)""")).isEmpty();
        }
    }

    @Test
    void onPaperThePhasesLieOpenAndNothingIsLeftToPress() {
        try (Gallery gallery = new Gallery(800, 1100, ColorScheme.LIGHT)) {
            Page page = ScoreSheetSketch.folded(gallery);
            page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
            assertThat(page.locator("#step-TF01").isVisible()).isTrue();
            assertThat(page.locator("#step-TF09 .says [data-level]:visible").allTextContents())
                    .containsExactly("one plane, even, to clear cornea");
            assertThat(page.locator(".nav").isVisible()).isFalse();
            assertThat(page.locator(".verdict-bar .button").isVisible()).isFalse();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {360, 1280})
    void theWholeSheetKeepsTheGuidelinesInForcedColoursToo(int width) {
        try (Gallery gallery = new Gallery(new Browser.NewContextOptions()
                .setViewportSize(width, 800)
                .setForcedColors(ForcedColors.ACTIVE)
                .setReducedMotion(ReducedMotion.REDUCE))) {
            Page page = ScoreSheetSketch.open(gallery);
            Axe.assertNoViolations(page);
            assertThat((int) page.evaluate("() => document.getAnimations().length"))
                    .isZero();
            assertThat(gallery.complaints()).isEmpty();
        }
    }
}
