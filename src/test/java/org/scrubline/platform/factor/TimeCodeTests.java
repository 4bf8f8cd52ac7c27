package org.scrubline.platform.factor;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.bouncycastle.util.encoders.Base32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeCodeTests {

    /** The secret both documents use. */
    private static final byte[] SECRET = "12345678901234567890".getBytes(StandardCharsets.US_ASCII);

    private static final Instant NOON = Instant.parse("2026-03-21T12:00:00Z");

    /** RFC 4226 appendix D, the table of HOTP values. */
    @ParameterizedTest
    @CsvSource({
        "0, 755224", "1, 287082", "2, 359152", "3, 969429", "4, 338314",
        "5, 254676", "6, 287922", "7, 162583", "8, 399871", "9, 520489"
    })
    void codesByCounterAreThoseOfTheStandard(long counter, String code) {
        assertThat(TimeCode.of(SECRET, counter, 6)).isEqualTo(code);
    }

    /** RFC 6238 appendix B, the lines with SHA-1; eight digits there. */
    @ParameterizedTest
    @CsvSource({
        "59, 94287082",
        "1111111109, 07081804",
        "1111111111, 14050471",
        "1234567890, 89005924",
        "2000000000, 69279037",
        "20000000000, 65353130"
    })
    void codesByTimeAreThoseOfTheStandard(long second, String code) {
        long step = TimeCode.step(Instant.ofEpochSecond(second));
        assertThat(TimeCode.of(SECRET, step, 8)).isEqualTo(code);
    }

    /** RFC 4648 section 10 gives no longer vector; this is its alphabet over the secret of RFC 6238. */
    @Test
    void theSecretIsWrittenInBase32() {
        assertThat(Base32.toBase32String(SECRET)).isEqualTo("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ");
        assertThat(Base32.toBase32String("foobar".getBytes(StandardCharsets.US_ASCII)))
                .isEqualTo("MZXW6YTBOI======");
    }

    @ParameterizedTest
    @CsvSource({"-60, false", "-30, true", "0, true", "30, true", "60, false"})
    void aClockMayBeOneStepOff(long seconds, boolean taken) {
        String code = TimeCode.of(SECRET, TimeCode.step(NOON.plusSeconds(seconds)), 6);
        assertThat(TimeCode.matching(SECRET, code, NOON).isPresent()).isEqualTo(taken);
    }

    @ParameterizedTest
    @CsvSource({"''", "00000", "0000000", "abcdef"})
    void whatIsNoCodeMatchesNothing(String typed) {
        assertThat(TimeCode.matching(SECRET, typed, NOON)).isEmpty();
    }
}
