package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged commands as an operator types them: beside a running server, and on a new directory. */
class BackupIT {

    @TempDir
    Path directory;

    @Test
    void aServerIsBackedUpWhileItRunsAndComesBackElsewhere() throws Exception {
        Path backup = directory.resolve("demo.backup");
        Path moved = directory.resolve("moved");
        String cohort;
        try (ServerProcess server = DemoServer.start(directory.resolve("data"))) {
            cohort = facts(server);
            assertThat(command("backup", "--out", backup, "data")).isZero();
            assertThat(command("backup", "--out", backup, "data"))
                    .as("the name is taken")
                    .isEqualTo(1);
            assertThat(command("restore", "--from", backup, "data"))
                    .as("the server runs")
                    .isEqualTo(1);
        }
        assertThat(command("restore", "--from", backup, "data"))
                .as("it holds data")
                .isEqualTo(1);
        assertThat(command("restore", "--from", backup, "moved")).isZero();
        try (ServerProcess server = ServerProcess.start(moved)) {
            assertThat(facts(server)).isEqualTo(cohort);
        }
    }

    /** What the director reads: only right when accounts, passwords, roles and signed sheets are back. */
    private static String facts(ServerProcess server) {
        String page = Visitor.loggedIn(server, "delmarr").get("/cohort").body();
        String facts = page.substring(page.indexOf("class=\"facts\""));
        facts = facts.substring(0, facts.indexOf("</ul>"));
        assertThat(facts).contains("signed cases");
        return facts.replaceAll("as of [^<]*", "");
    }

    private int command(String name, String option, Path file, String data) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-jar",
                System.getProperty("scrubline.test.jar", "target/scrubline.jar"),
                name,
                option,
                file.toString(),
                "--scrubline.data-directory=" + directory.resolve(data)));
        Process process = new ProcessBuilder(line).inheritIO().start();
        assertThat(process.waitFor(300, TimeUnit.SECONDS)).isTrue();
        return process.exitValue();
    }
}
