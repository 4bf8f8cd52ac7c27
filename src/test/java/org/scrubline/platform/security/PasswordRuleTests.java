package org.scrubline.platform.security;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.UnsafeSettings;

/** What is refused follows NIST SP 800-63B, section 5.1.1.2 (from memory): lists, repeated and sequential signs, names. */
class PasswordRuleTests {

    private static final List<String> NAMES = List.of("averrin", "Ansel Verrin", "Sankt Orlin Deanery");

    private final PasswordRule rule = new PasswordRule(new RefusedPasswords(""));

    private static String why(PasswordRule rule, String password) {
        return rule.check(password, NAMES).map(Refusal::messageKey).orElse("taken");
    }

    private String why(String password) {
        return why(rule, password);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a quiet test sentence",
                "norrvale demo only",
                "kettle under snow",
                "Z6#p!vQ2@mW9",
                "verrin likes green apples",
                "čtyři modré hrušky",
                "梅の花が静かに咲いた朝のこと",
                "the orlin bus was late again"
            })
    void aPasswordThatIsHardToGuessIsTaken(String password) {
        assertThat(why(password)).isEqualTo("taken");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "aaaaaaaaaaaa",
                "121212121212",
                "abcabcabcabc",
                "mango7mango7",
                "abcdefghijkl",
                "123456789012",
                "987654321098",
                "qwertyuiopas",
                "QWERTYuiop12",
                "aabbccddeeff",
                "1 2 3 4 5 6 7 8 9"
            })
    void signsThatRepeatOrFollowEachOtherAreRefused(String password) {
        assertThat(why(password)).isEqualTo("refusal.password.pattern");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "anselverrin1",
                "Ansel Verrin 2026",
                "averrin-2026!",
                "2026.verrin.58",
                "Scrubline2026!",
                "SanktOrlin-17-09",
                "ａｖｅｒｒｉｎ-2026!"
            })
    void namesWithALittleAroundThemAreRefused(String password) {
        assertThat(why(password)).isEqualTo("refusal.password.names");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "correct horse battery staple",
                "CorrectHorseBatteryStaple",
                "p@ssw0rd1234",
                "Trabeculectomy",
                "1q2w3e4r5t6y"
            })
    void whatStandsOnOurOwnListIsRefusedHoweverItIsWritten(String password) {
        assertThat(why(password)).isEqualTo("refusal.password.known");
    }

    @Test
    void whatStandsInTheFileOfTheOperatorIsRefusedAndNothingElse(@TempDir Path folder) throws IOException {
        Path list = folder.resolve("found-out.txt");
        String many = IntStream.range(0, 100_000)
                .mapToObj(i -> "line of the list number " + i)
                .collect(Collectors.joining("\n"));
        Files.write(list, ("short\r\nkettle under snow\r\n" + many).getBytes(StandardCharsets.UTF_8));
        PasswordRule fuller = new PasswordRule(new RefusedPasswords(list.toString()));
        assertThat(why("kettle under snow")).isEqualTo("taken");
        assertThat(why(fuller, "kettle under snow")).isEqualTo("refusal.password.known");
        assertThat(why(fuller, "Line of the list number 99999")).isEqualTo("refusal.password.known");
        assertThat(why(fuller, "line of the list number 100000")).isEqualTo("taken");
        assertThat(why(fuller, "correct horse battery staple")).isEqualTo("refusal.password.known");
    }

    @Test
    void bytesThatAreNoTextDoNotEndTheList(@TempDir Path folder) throws IOException {
        Path list = folder.resolve("mixed.txt");
        Files.write(list, new byte[] {(byte) 0xff, (byte) 0xfe, 'x', '\n'});
        Files.writeString(list, "kettle under snow\n", StandardOpenOption.APPEND);
        assertThat(why(new PasswordRule(new RefusedPasswords(list.toString())), "kettle under snow"))
                .isEqualTo("refusal.password.known");
    }

    @Test
    void aListThatIsNotThereStopsTheStartWithASentence() {
        assertThatThrownBy(() -> new RefusedPasswords("/no/such/list.txt"))
                .isInstanceOf(UnsafeSettings.class)
                .hasMessageContaining("scrubline.passwords.refused");
    }

    @Test
    void theLengthIsCountedInCodePoints() {
        assertThat(rule.check("🦊🐻🐼🐨🐯🦁🐮🐷🐸🐵🐔", List.of())).isNotEqualTo(Optional.empty());
        assertThat(rule.check("🦊🐻🍎🐨🚲🦁🎈🐷🌂🐵🥁🐔", List.of())).isEmpty();
        assertThat(why("short one")).isEqualTo("refusal.password.length");
    }
}
