package org.scrubline.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CanonicalJsonTests {

    /** RFC 8785, section 3.2.2: the sample object; its canonical bytes are printed in section 3.2.4. */
    @Test
    void theSampleOfTheStandardHasTheBytesTheStandardPrints() {
        String sample = """
                {
                  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
                  "string": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
                  "literals": [null, true, false]
                }
                """;
        String bytes =
                "7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a5b333333333333333333"
                        + "2e333333333333332c31652b33302c342e352c302e3030322c31652d32375d2c22737472696e67223a22e282ac245c7530303066"
                        + "5c6e4127425c225c5c5c5c5c222f227d";

        assertThat(CanonicalJson.canonical(sample).getBytes(StandardCharsets.UTF_8))
                .isEqualTo(HexFormat.of().parseHex(bytes));
    }

    /** RFC 8785, section 3.2.3: the property names it lists and the order it gives for them. */
    @Test
    void namesAreSortedByUtf16CodeUnits() {
        String sample = """
                {
                  "\\u20ac": "Euro Sign",
                  "\\r": "Carriage Return",
                  "\\ufb33": "Hebrew Letter Dalet With Dagesh",
                  "1": "One",
                  "\\ud83d\\ude00": "Emoji: Grinning Face",
                  "\\u0080": "Control",
                  "\\u00f6": "Latin Small Letter O With Diaeresis"
                }
                """;

        assertThat(CanonicalJson.canonical(sample))
                .containsSubsequence(
                        "Carriage Return",
                        "One",
                        "Control",
                        "Latin Small Letter O With Diaeresis",
                        "Euro Sign",
                        "Emoji: Grinning Face",
                        "Hebrew Letter Dalet With Dagesh");
    }

    @Test
    void textTypedInTwoNormalFormsIsOneText() {
        assertThat(CanonicalJson.of(Map.of("name", "Zoe\u0308 Ame\u0301lie")))
                .isEqualTo(CanonicalJson.of(Map.of("name", "Zo\u00eb Am\u00e9lie")))
                .isNotEqualTo(CanonicalJson.of(Map.of("name", "Zoe Amelie")));
    }

    @Test
    void whatIsNoJsonIsNoContent() {
        assertThatThrownBy(() -> CanonicalJson.canonical("{\"open\": ")).isInstanceOf(UncheckedIOException.class);
    }

    /** FIPS 180-4 example "abc", and the digest of no bytes at all (the empty tree of RFC 6962, section 2.1). */
    @Test
    void theHashIsSha256InLowerCase() {
        assertThat(List.of(CanonicalJson.sha256("abc"), CanonicalJson.sha256("")))
                .containsExactly(
                        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                        "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    }

    @Test
    void aHashIsThirtyTwoBytesAndOtherTextIsNone() {
        assertThat(CanonicalJson.hashBytes(CanonicalJson.sha256("")))
                .hasSize(32)
                .startsWith(0xe3, 0xb0, 0xc4, 0x42);
        for (String other : new String[] {"", "e3b0c442", "E3".repeat(32), "zz".repeat(32), "e3".repeat(33)}) {
            assertThat(CanonicalJson.hashBytes(other)).as(other).isEmpty();
        }
    }
}
