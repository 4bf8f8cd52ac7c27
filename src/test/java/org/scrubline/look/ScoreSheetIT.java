package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
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

/** The score sheet in a browser; criteria are those of WCAG 2.2, named beside the checks. */
class ScoreSheetIT {

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
            Page page = open(gallery);
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
            Page page = open(gallery);
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
            assertThat((boolean) open(gallery).evaluate(NONE_WIDER)).isTrue();
        }
    }

    @Test
    void widerLetterAndLineSpacingLosesNothing() {
        try (Gallery gallery = new Gallery(360, 640, ColorScheme.LIGHT)) {
            Page page = open(gallery);
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
    void aBlankStepIsScoredByTheKeyboardAndSaysItsSentence() {
        try (Gallery gallery = new Gallery(360, 640, ColorScheme.LIGHT)) {
            Page page = open(gallery);
            Locator step = page.locator("#step-TF12");
            assertThat(step.locator("input:checked").count()).isZero();
            assertThat(step.locator("[data-level]:visible").count()).isZero();
            step.locator("input[value='1']").focus();
            page.keyboard().press("Space");
            page.keyboard().press("ArrowRight");
            page.keyboard().press("ArrowRight");
            assertThat(step.locator("input:checked").getAttribute("value")).isEqualTo("3");
            assertThat(step.locator("[data-level]:visible").allTextContents())
                    .containsExactly("usable, one extra bite, brief shallowing");
            step.locator("label.state").last().click();
            assertThat(step.locator("input:checked").getAttribute("value")).isEqualTo("NOT_SEEN");
            assertThat(step.locator("[data-level]:visible").count()).isZero();
        }
    }

    @Test
    void aMeasureStaysEmptyUntilItIsTurned() {
        try (Gallery gallery = new Gallery(360, 640, ColorScheme.LIGHT)) {
            Page page = open(gallery);
            Locator step = page.locator("#step-TF12");
            step.locator("summary").click();
            Locator measure = step.locator("input[type=number]").first();
            assertThat(measure.inputValue()).isEmpty();
            Locator more = step.locator("button[data-turn='1']").first();
            more.click();
            assertThat(measure.inputValue()).isEqualTo("0");
            more.click();
            assertThat(measure.inputValue()).isEqualTo("0.1");
            step.locator("button[data-turn='-1']").first().click();
            assertThat(measure.inputValue()).isEqualTo("0");
        }
    }

    @Test
    void scoringAStepMovesNothingElse() {
        try (Gallery gallery = new Gallery(360, 640, ColorScheme.LIGHT)) {
            Page page = open(gallery);
            int before = (int) page.evaluate("() => document.documentElement.scrollHeight");
            page.locator("#step-TF12 label.level").nth(3).click();
            assertThat((int) page.evaluate("() => document.documentElement.scrollHeight"))
                    .isEqualTo(before);
        }
    }

    @Test
    void aSheetOfNineteenStepsIsShortOnATelephoneAndUnfoldsAsItIsScored() {
        try (Gallery gallery = new Gallery(360, 800, ColorScheme.LIGHT)) {
            Page page = folded(gallery);
            assertThat((int) page.evaluate("() => document.documentElement.scrollHeight"))
                    .isLessThan(5 * 800 / 2);
            Locator closure = page.locator("#phase-P6");
            Locator entry = page.locator("#phase-P5");
            entry.locator("label.level:nth-child(4)").nth(1).click();
            entry.locator("label.level:nth-child(4)").nth(2).click();
            assertThat(entry.locator("[data-progress]").textContent()).isEqualTo("3 of 4");
            assertThat(closure.getAttribute("open")).isNull();
            entry.locator("label.state").last().click();
            assertThat(entry.locator("[data-progress]").textContent()).isEqualTo("4 of 4");
            assertThat(entry.locator(".ticks i.cut").count()).isEqualTo(4);
            assertThat(closure.getAttribute("open")).isNotNull();
            assertThat(entry.getAttribute("open")).isNotNull();
        }
    }

    @Test
    void onPaperThePhasesLieOpenAndNothingIsLeftToPress() {
        try (Gallery gallery = new Gallery(800, 1100, ColorScheme.LIGHT)) {
            Page page = folded(gallery);
            page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
            assertThat(page.locator("#step-TF01").isVisible()).isTrue();
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
            Page page = open(gallery);
            Axe.assertNoViolations(page);
            assertThat((int) page.evaluate("() => document.getAnimations().length"))
                    .isZero();
            assertThat(gallery.complaints()).isEmpty();
        }
    }

    private static Page folded(Gallery gallery) {
        return gallery.show("score-sheet", ScoreSheetSketch.page());
    }

    private static Page open(Gallery gallery) {
        Page page = folded(gallery);
        page.evaluate("() => document.querySelectorAll('details.phase').forEach(phase => phase.open = true)");
        return page;
    }
}
