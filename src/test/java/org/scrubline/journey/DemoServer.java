package org.scrubline.journey;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.support.SmtpReceiver;

/** One packaged server with the demo programme for all journeys of a run that do not kill it. */
final class DemoServer {

    static final String PASSWORD = "norrvale demo only";

    /** Enough of the programme for every page to have something to show. */
    private static final String SCALE = "0.08";

    /** What the settings of the shared server call it, wherever it listens. */
    static final String ORIGIN = "https://scrubline.hospital.example";

    /** Where the shared server sends its mail. */
    static final SmtpReceiver MAIL = receiver();

    private static @Nullable ServerProcess shared;

    private DemoServer() {}

    /** The shared server; stopped when the run ends. */
    static synchronized ServerProcess shared() {
        if (shared == null) {
            ServerProcess server = start(
                    directory(),
                    "--scrubline.web.hosts=localhost",
                    "--scrubline.web.origin=" + ORIGIN,
                    "--scrubline.jobs.poll=1s",
                    "--spring.mail.host=127.0.0.1",
                    "--spring.mail.port=" + MAIL.port());
            Runtime.getRuntime().addShutdownHook(new Thread(server::close, "stop-demo-server"));
            shared = server;
        }
        return shared;
    }

    /** A server of the test's own, filled before it is handed over. */
    static ServerProcess start(Path directory, String... options) {
        List<String> all = new ArrayList<>(List.of("--spring.profiles.active=demo", "--scrubline.demo.scale=" + SCALE));
        all.addAll(List.of(options));
        ServerProcess server = ServerProcess.start(directory, all.toArray(String[]::new));
        server.printed(java.util.regex.Pattern.compile("(Scrubline demo)"));
        return server;
    }

    private static SmtpReceiver receiver() {
        try {
            return new SmtpReceiver();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path directory() {
        try {
            return Files.createTempDirectory("scrubline-demo");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
