package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Contrast of the colour tokens by the formula of WCAG 2.2, "relative luminance" and "contrast ratio". */
class ContrastTests {

    private static final Pattern TOKEN = Pattern.compile("--([a-z0-9-]+): (#[0-9a-f]{6});");
    private static final String[] THEMES =
            sheet("tokens.css").split(Pattern.quote("@media (prefers-color-scheme: dark)"));
    private static final Map<String, String> LIGHT = tokens(THEMES[0]);
    private static final Map<String, String> DARK = tokens(THEMES[1]);
    private static final Map<String, String> PAPER = tokens(sheet("print.css"));

    @ParameterizedTest
    @CsvSource({
        "ink, paper, 4.5",
        "ink, sheet, 4.5",
        "ink, thread-wash, 4.5",
        "ink, iodine-wash, 4.5",
        "soft, paper, 4.5",
        "soft, sheet, 4.5",
        "soft, thread-wash, 4.5",
        "thread, paper, 4.5",
        "thread, sheet, 4.5",
        "thread, thread-wash, 4.5",
        "thread, iodine-wash, 4.5",
        "iodine, paper, 4.5",
        "iodine, sheet, 4.5",
        "iodine, iodine-wash, 4.5",
        "on-thread, thread, 4.5",
        "paper, ink, 4.5",
        "on-tint, tint-1, 4.5",
        "on-tint, tint-2, 4.5",
        "on-tint, tint-3, 4.5",
        "on-tint, tint-4, 4.5",
        "on-tint-5, tint-5, 4.5",
        "edge, paper, 3",
        "edge, sheet, 3",
        "thread, paper, 3",
        "iodine, paper, 3"
    })
    void everyPairThatMeetsOnAPageCanBeTold(String front, String ground, double least) {
        Map.of("light", LIGHT, "dark", DARK, "print", PAPER)
                .forEach((name, theme) -> assertThat(ratio(theme, front, ground))
                        .as("%s on %s, %s", front, ground, name)
                        .isGreaterThanOrEqualTo(least));
    }

    @Test
    void theFiveTintsGoOneWay() {
        for (int tint = 1; tint < 5; tint++) {
            assertThat(luminance(LIGHT.get("tint-" + tint))).isGreaterThan(luminance(LIGHT.get("tint-" + (tint + 1))));
            assertThat(luminance(PAPER.get("tint-" + tint))).isGreaterThan(luminance(PAPER.get("tint-" + (tint + 1))));
            assertThat(luminance(DARK.get("tint-" + tint))).isLessThan(luminance(DARK.get("tint-" + (tint + 1))));
        }
    }

    @Test
    void theFormulaGivesTheStandardsOwnExtremes() {
        Map<String, String> extremes = Map.of("black", "#000000", "white", "#ffffff");
        assertThat(ratio(extremes, "black", "white")).isEqualTo(21.0, Offset.offset(1e-9));
        assertThat(ratio(extremes, "white", "white")).isEqualTo(1.0, Offset.offset(1e-9));
    }

    private static double ratio(Map<String, String> theme, String one, String other) {
        double first = luminance(theme.get(one));
        double second = luminance(theme.get(other));
        return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
    }

    private static double luminance(String colour) {
        return 0.2126 * channel(colour, 1) + 0.7152 * channel(colour, 3) + 0.0722 * channel(colour, 5);
    }

    private static double channel(String colour, int at) {
        double part = Integer.parseInt(colour.substring(at, at + 2), 16) / 255.0;
        return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
    }

    private static String sheet(String name) {
        try {
            return Files.readString(Path.of("src/main/resources/static/css", name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, String> tokens(String css) {
        Matcher token = TOKEN.matcher(css);
        Map<String, String> found = new HashMap<>();
        while (token.find()) {
            found.put(token.group(1), token.group(2));
        }
        return found;
    }
}
