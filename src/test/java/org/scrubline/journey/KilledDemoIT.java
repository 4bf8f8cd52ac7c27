package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A demo cut off while it is written leaves nothing half, and the next start writes it whole. */
class KilledDemoIT {

    @Test
    void aDemoKilledWhileItIsWrittenBeginsAgain(@TempDir Path directory) {
        ServerProcess cut = ServerProcess.start(directory, "--spring.profiles.active=demo", "--scrubline.demo.scale=1");
        cut.printed(Pattern.compile("Demo programme: (100) of 900 cases"));
        cut.kill();
        try (ServerProcess server = DemoServer.start(directory)) {
            assertThat(server.log()).contains("Writing the demo programme", "72 of 72 cases");
            assertThat(Visitor.loggedIn(server, "delmarr").get("/cohort").body())
                    .contains("signed cases");
        }
    }
}
