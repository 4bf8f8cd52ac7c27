package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import org.junit.jupiter.api.Test;

/** The score sheet at work in a browser. */
class ScoreSheetIT {

    @Test
    void aBlankStepIsScoredByTheKeyboardAndSaysItsSentence() {
        try (Gallery gallery = new Gallery(360, 640, ColorScheme.LIGHT)) {
            Page page = ScoreSheetSketch.open(gallery);
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
            Page page = ScoreSheetSketch.open(gallery);
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
            Page page = ScoreSheetSketch.open(gallery);
            int before = (int) page.evaluate("() => document.documentElement.scrollHeight");
            page.locator("#step-TF12 label.level").nth(3).click();
            assertThat((int) page.evaluate("() => document.documentElement.scrollHeight"))
                    .isEqualTo(before);
        }
    }

    @Test
    void aSheetOfNineteenStepsIsShortOnATelephoneAndUnfoldsAsItIsScored() {
        try (Gallery gallery = new Gallery(360, 800, ColorScheme.LIGHT)) {
            Page page = ScoreSheetSketch.folded(gallery);
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
}
