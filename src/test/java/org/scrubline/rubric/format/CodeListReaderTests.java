package org.scrubline.rubric.format;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class CodeListReaderTests {

    @Test
    void anEventUsedTwiceIsRefused() {
        String text = "events:\n  - {code: A, name: One}\n  - {code: A, name: Two}\n";

        assertThatThrownBy(() -> CodeListReader.events("events.yaml", text))
                .hasMessage("events.yaml, events, entry A, key code: is used twice");
    }

    @Test
    void anUnknownKeyOfAnEventIsRefused() {
        assertThatThrownBy(
                        () -> CodeListReader.events("events.yaml", "events:\n  - {code: A, name: One, blocks: true}\n"))
                .hasMessage("events.yaml, events, entry A, key blocks: is not known here");
    }

    @Test
    void negativePointsAreRefused() {
        String text = "factors:\n  - {code: A, name: One, technical: -1, healing: 0, sources: [memory]}\n";

        assertThatThrownBy(() -> CodeListReader.complexity("complexity.yaml", text))
                .hasMessage(
                        "complexity.yaml, factors, entry A, key technical: must be a whole number of 0 or more, found -1");
    }

    @Test
    void aFactorWithoutSourceIsRefused() {
        String text = "factors:\n  - {code: A, name: One, technical: 1, healing: 0}\n";

        assertThatThrownBy(() -> CodeListReader.complexity("complexity.yaml", text))
                .hasMessage("complexity.yaml, factors, entry A, key sources: is missing");
    }

    @Test
    void aSourceWithoutCitationIsRefused() {
        assertThatThrownBy(() -> CodeListReader.sources("sources.yaml", "Vaz: \"\"\n"))
                .hasMessage("sources.yaml, key Vaz: must be text, found \"\"");
    }
}
