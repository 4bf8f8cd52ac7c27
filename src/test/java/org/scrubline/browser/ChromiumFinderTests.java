package org.scrubline.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChromiumFinderTests {

    @TempDir
    private Path directory;

    @Test
    void theFirstPlaceThatCanBeRunIsTaken() throws IOException {
        Path file = executable("chromium");
        assertThat(ChromiumFinder.firstOf(List.of(directory + "/none", file.toString(), directory + "/later")))
                .contains(file);
        assertThat(ChromiumFinder.firstOf(List.of(directory + "/none"))).isEmpty();
    }

    @Test
    void aSettingThatCannotBeRunIsRefusedByName() throws IOException {
        Path file = executable("mine");
        assertThat(ChromiumFinder.chosen(file.toString())).isEqualTo(file);
        assertThatIllegalStateException()
                .isThrownBy(() -> ChromiumFinder.chosen(directory + "/none"))
                .withMessageContaining("scrubline.test.chromium")
                .withMessageContaining("/none");
    }

    @Test
    void withNoneAtHandOneLineSaysHowToSetIt() {
        assertThat(ChromiumFinder.NONE).doesNotContain("\n").contains("-Dscrubline.test.chromium=");
    }

    @Test
    void aCommandThatHangsOrFailsOrIsMissingCountsAsNone() {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        assertThat(ChromiumFinder.run(List.of(java, "-version"), 60)).isTrue();
        assertThat(ChromiumFinder.run(List.of(java, "-no-such-option"), 60)).isFalse();
        assertThat(ChromiumFinder.run(List.of(directory + "/none"), 60)).isFalse();
        assertThat(ChromiumFinder.run(List.of(java, "-version"), 0)).isFalse();
    }

    private Path executable(String name) throws IOException {
        Path file = Files.createFile(directory.resolve(name));
        assertThat(file.toFile().setExecutable(true)).isTrue();
        return file;
    }
}
