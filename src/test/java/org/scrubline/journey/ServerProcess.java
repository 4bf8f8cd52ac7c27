package org.scrubline.journey;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The packaged server as a process of its own, on a data directory that outlives it. */
final class ServerProcess implements AutoCloseable {

    private static final Pattern PORT = Pattern.compile("Tomcat started on port (\\d+)");
    private static final Duration PATIENCE = Duration.ofSeconds(180);

    private final Process process;
    private final Path log;
    private final int port;

    private ServerProcess(Process process, Path log, int port) {
        this.process = process;
        this.log = log;
        this.port = port;
    }

    /**
     * Starts the jar and waits until it answers.
     *
     * @param directory its data directory
     * @param options further command-line options
     */
    static ServerProcess start(Path directory, String... options) {
        try {
            Path log = Files.createTempFile("scrubline-server", ".log");
            Process process = run(log, directory, options);
            return new ServerProcess(process, log, Integer.parseInt(waitFor(process, log, PORT)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** How a start ended that was refused. */
    record Ended(int exit, String printed) {}

    /** Starts the jar and waits until it has ended by itself. */
    static Ended refused(Path directory, String... options) {
        try {
            Path log = Files.createTempFile("scrubline-refused", ".log");
            Process process = run(log, directory, options);
            if (!process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException("the server did not refuse to start:\n" + read(log));
            }
            return new Ended(process.exitValue(), read(log));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static Process run(Path log, Path directory, String... options) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                // Half the start on two cores: such a server lives too short for the second compiler to pay.
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-jar",
                System.getProperty("scrubline.test.jar", "target/scrubline.jar"),
                "--server.port=0",
                "--scrubline.data-directory=" + directory));
        command.addAll(List.of(options));
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile());
        // A JVM that is told something this way says so in the middle of the log.
        builder.environment().remove("JAVA_TOOL_OPTIONS");
        return builder.start();
    }

    /** The first group of the first line of the server's output that matches. */
    String printed(Pattern pattern) {
        return waitFor(process, log, pattern);
    }

    /** Everything the server has written so far. */
    String log() {
        return read(log);
    }

    String address() {
        return "http://localhost:" + port;
    }

    /** As a power cut would end it: nothing is flushed, nothing is told. */
    void kill() {
        process.destroyForcibly();
        awaitEnd();
    }

    @Override
    public void close() {
        process.destroy();
        awaitEnd();
    }

    private void awaitEnd() {
        try {
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException("the server did not stop; its log is " + log);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static String waitFor(Process process, Path log, Pattern pattern) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            Matcher matcher = pattern.matcher(read(log));
            if (matcher.find()) {
                return matcher.group(1);
            }
            if (!process.isAlive()) {
                throw new IllegalStateException("the server ended:\n" + read(log));
            }
            pause();
        }
        process.destroyForcibly();
        throw new IllegalStateException("no " + pattern + " within " + PATIENCE + ":\n" + read(log));
    }

    private static String read(Path log) {
        try {
            return Files.readString(log);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void pause() {
        try {
            Thread.sleep(100);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
