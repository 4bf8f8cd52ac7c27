package org.scrubline.browser;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxeIT {

    private static final String FRAME =
            "<!DOCTYPE html><html lang=\"en\"><head><title>t</title></head><body><main>%s</main></body></html>";

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "<input type='text'> | label",
                "<p style='color:#999;background:#fff'>pale</p> | color-contrast",
                "<img src='data:,'> | image-alt",
                "<button style='width:8px;padding:0'>a</button><button style='width:8px;padding:0'>b</button> | target-size"
            })
    void aBrokenRuleIsNamed(String markup, String rule) {
        assertThatThrownBy(() -> check(markup))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining(rule);
    }

    @Test
    void aSoundPagePasses() {
        assertThatCode(() -> check("<label>Name <input></label>")).doesNotThrowAnyException();
    }

    private static void check(String markup) {
        try (BrowserContext context = Chromium.browser().newContext()) {
            Page page = context.newPage();
            page.setContent(FRAME.formatted(markup));
            Axe.assertNoViolations(page);
        }
    }
}
