package org.scrubline.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
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
                .contains("no command curvse")
                .contains("curves --scores")
                .contains("statistic METHOD");
    }

    @ParameterizedTest
    @ValueSource(strings = {"--help", "curves --help", "statistic --help", "backup --help", "restore --help"})
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

    private OptionalInt run(String line) {
        List<String> args = line.isEmpty() ? List.of() : List.of(line.split(" "));
        return Commands.run(args, new PrintStream(out, true), new PrintStream(err, true));
    }

    private static String text(ByteArrayOutputStream bytes) {
        return bytes.toString(StandardCharsets.UTF_8);
    }
}
