package org.scrubline.journey;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** One packaged server with the demo programme for all journeys of a run that do not kill it. */
final class DemoServer {

    static final String PASSWORD = "norrvale demo only";

    /** Enough of the programme for every page to have something to show. */
    private static final String SCALE = "0.08";

    private static @Nullable ServerProcess shared;

    private DemoServer() {}

    /** The shared server; stopped when the run ends. */
    static synchronized ServerProcess shared() {
        if (shared == null) {
            ServerProcess server = start(directory());
            Runtime.getRuntime().addShutdownHook(new Thread(server::close, "stop-demo-server"));
            shared = server;
        }
        return shared;
    }

    /** A server of the test's own, filled before it is handed over. */
    static ServerProcess start(Path directory) {
        ServerProcess server =
                ServerProcess.start(directory, "--spring.profiles.active=demo", "--scrubline.demo.scale=" + SCALE);
        server.printed(java.util.regex.Pattern.compile("(Scrubline demo)"));
        return server;
    }

    private static Path directory() {
        try {
            return Files.createTempDirectory("scrubline-demo");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
