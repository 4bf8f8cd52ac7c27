package org.scrubline.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoCommandTests {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    private Path folder;

    @Test
    void theScoresOfTheDemoAreReadByCurves() throws IOException {
        Path scores = folder.resolve("scores.csv");
        Path config = folder.resolve("config.json");
        Files.writeString(config, "{\"K\": 5, \"estimate\": \"fit\", \"critical_steps\": [\"TF09\", \"TF12\"]}");
        assertThat(run("demo", "--scores", scores.toString(), "--scale", "0.2")).isZero();
        assertThat(Files.readAllLines(scores).get(0))
                .isEqualTo("assessment,trainee,case_index,experience,gap_excess,supervisor,x1,x2,x3,step,lo,hi");
        assertThat(run("curves", "--scores", scores.toString(), "--config", config.toString()))
                .as(err::toString)
                .isZero();
        assertThat(out.toString(StandardCharsets.UTF_8)).contains("\"trainee\"", "\"T05\"");
    }

    @Test
    void theSameSeedWritesTheSameFile() throws IOException {
        Path one = folder.resolve("one.csv");
        Path other = folder.resolve("other.csv");
        run("demo", "--scores", one.toString(), "--seed", "7", "--scale", "0.1");
        run("demo", "--scores", other.toString(), "--seed", "7", "--scale", "0.1");
        assertThat(other).hasSameBinaryContentAs(one);
        run("demo", "--scores", other.toString(), "--seed", "8", "--scale", "0.1");
        assertThat(Files.readString(other)).isNotEqualTo(Files.readString(one));
    }

    @Test
    void whatCannotBeDrawnIsWrongUse() {
        Path file = folder.resolve("none.csv");
        assertThat(run("demo", "--scores", file.toString(), "--scale", "0")).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("the scale must be more than 0");
        assertThat(run("demo", "--scores", file.toString(), "--procedure", "TONSILS"))
                .isEqualTo(2);
        assertThat(run("demo", "--scores", folder.resolve("no/such/folder.csv").toString()))
                .isEqualTo(2);
        assertThat(run("demo")).isEqualTo(2);
        assertThat(file).doesNotExist();
    }

    private int run(String... args) {
        return Commands.run(List.of(args), new PrintStream(out), new PrintStream(err))
                .orElseThrow();
    }
}
