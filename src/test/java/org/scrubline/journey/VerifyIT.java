package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged commands on the bundled database with the demo programme, while the server runs and when it does not. */
class VerifyIT {

    private record Answer(int exit, String printed) {}

    @Test
    void theDemoIsSoundWhileTheServerRunsAndAfterwards(@TempDir Path folder) throws Exception {
        Path data = folder.resolve("data");
        Path file = folder.resolve("evidence.jsonl");
        ServerProcess server = DemoServer.start(data);
        try {
            Answer running = run(data, "verify");
            assertThat(running.exit()).as(running.printed()).isZero();
            assertThat(running.printed()).contains("Sound: ");
            Answer written = run(data, "evidence", "--out", file.toString());
            assertThat(written.exit()).as(written.printed()).isZero();
        } finally {
            server.close();
        }
        assertThat(Files.getPosixFilePermissions(data.resolve("ledger.key"))).hasSize(2);
        Answer stopped = run(data, "verify");
        assertThat(stopped.exit()).as(stopped.printed()).isZero();
        assertThat(stopped.printed()).contains("Sound: ");
        Answer alone = run(folder.resolve("nothing"), "verify", "--file", file.toString());
        assertThat(alone.exit()).as(alone.printed()).isZero();
        assertThat(run(folder.resolve("nothing"), "verify").exit()).isEqualTo(2);
    }

    private static Answer run(Path data, String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-jar",
                System.getProperty("scrubline.test.jar", "target/scrubline.jar")));
        command.addAll(List.of(args));
        command.add("--scrubline.data-directory=" + data);
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Answer(process.waitFor(), printed);
    }
}
