package org.scrubline.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandsTests {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @ParameterizedTest
    @ValueSource(strings = {"", "serve", "--server.port=0", "serve --spring.profiles.active=demo"})
    void theServerStartsUnlessACommandIsNamed(String line) {
        assertThat(run(line)).isEmpty();
        assertThat(out.size() + err.size()).isZero();
    }

    @Test
    void anUnknownCommandIsWrongUseAndNamesTheOthers() {
        assertThat(run("curvse")).hasValue(2);
        assertThat(text(err))
                .contains("There is no command curvse.")
                .contains("demo ", "curves ", "statistic ", "verify ", "evidence ", "backup ", "restore ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--help",
                "help",
                "serve --help",
                "--server.port=0 --help",
                "demo --help",
                "curves --help",
                "statistic --help",
                "verify --help",
                "evidence --help",
                "backup --help",
                "restore --help"
            })
    void helpIsNoProblem(String line) {
        assertThat(run(line)).hasValue(0);
        assertThat(text(out)).isNotBlank();
        assertThat(text(err)).isEmpty();
    }

    @Test
    void aCommandWithoutItsFilesIsWrongUse() {
        assertThat(run("curves")).hasValue(2);
        assertThat(run("statistic")).hasValue(2);
        assertThat(run("backup")).hasValue(2);
        assertThat(run("restore --from")).hasValue(2);
        assertThat(run("restore --from --passphrase-file x")).hasValue(2);
        assertThat(text(out)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "curves --scores x --config y --colour, --colour",
        "curves --scores x --scores y --config z, only once",
        "curves --scores --config y, --scores",
        "statistic @file x, There is no method named @file",
        "verify --export x, There is no option --export.",
        "verify --file x --receipt y, not both",
        "verify --tenant nobody, --tenant",
        "verify --scrubline.data-directory, There is no option --scrubline.data-directory.",
        "verify --server.port=1, There is no option --server.port=1.",
        "evidence, Missing required option: '--out FILE'",
        "evidence --out x --passphrase-file y, There is no option --passphrase-file.",
        "backup --out x --from y, There is no option --from.",
        "restore --from x --out y, There is no option --out."
    })
    void whatACommandDoesNotKnowIsWrongUseAndNamed(String line, String sentence) {
        assertThat(run(line)).hasValue(2);
        assertThat(text(err)).contains(sentence);
        assertThat(text(out)).isEmpty();
    }

    private OptionalInt run(String line) {
        List<String> args = line.isEmpty() ? List.of() : List.of(line.split(" "));
        return Commands.run(args, new PrintStream(out, true), new PrintStream(err, true));
    }

    private static String text(ByteArrayOutputStream bytes) {
        return bytes.toString(StandardCharsets.UTF_8);
    }
}
