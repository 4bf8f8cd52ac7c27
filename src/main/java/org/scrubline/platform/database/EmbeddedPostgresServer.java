package org.scrubline.platform.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Starts the bundled PostgreSQL on a data directory that outlives the process. The library underneath is made for
 * tests, so every default that would risk real data is set here: durable writes, a password, directories of our own,
 * no start-up on another major version, an orphan of a killed run stopped first.
 */
final class EmbeddedPostgresServer {

    /** Major version of the bundled binaries; a data directory of another one needs a migration, not a start. */
    static final String MAJOR_VERSION = "18";

    private static final Logger log = LoggerFactory.getLogger(EmbeddedPostgresServer.class);

    private EmbeddedPostgresServer() {}

    /**
     * @param directory the application's data directory; holds {@code pg}, {@code pg-bin} and the secret
     * @param secret password of the superuser
     */
    static EmbeddedPostgres start(DataDirectory directory, String secret) throws IOException {
        Path data = directory.database();
        refuseOtherMajorVersion(data);
        stopOrphan(data);
        return EmbeddedPostgres.builder()
                .setOverrideWorkingDirectory(directory.binaries().toFile())
                .setDataDirectory(data)
                .setCleanDataDirectory(false)
                .setRegisterShutdownHook(false)
                .setPGStartupWait(Duration.ofSeconds(60))
                .setLocaleConfig("auth", "scram-sha-256")
                .setLocaleConfig("pwfile", directory.secret().toString())
                .setLocaleConfig("locale-provider", "builtin")
                .setLocaleConfig("locale", "C.UTF-8")
                .setConnectConfig("password", secret)
                .setServerConfig("listen_addresses", "127.0.0.1")
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("full_page_writes", "on")
                .setServerConfig("max_connections", "60")
                .start();
    }

    private static void refuseOtherMajorVersion(Path data) throws IOException {
        Path version = data.resolve("PG_VERSION");
        if (Files.exists(version)) {
            String found = Files.readString(version).trim();
            if (!found.equals(MAJOR_VERSION)) {
                throw new DatabaseUnusable("The data in " + data + " was written by PostgreSQL " + found
                        + "; this release brings PostgreSQL " + MAJOR_VERSION
                        + ". Start the release that wrote it and move the data over, or name a server of your own.");
            }
        }
    }

    /** A killed run leaves its server behind, which would block the port file of the next one. */
    private static void stopOrphan(Path data) throws IOException {
        Path pidFile = data.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return;
        }
        if (RunningServer.holds(data)) {
            throw new DatabaseUnusable("Another running Scrubline uses " + data + ". Stop it, or set another"
                    + " scrubline.data-directory.");
        }
        String firstLine =
                Files.readAllLines(pidFile).stream().findFirst().orElse("").trim();
        if (firstLine.matches("\\d+")) {
            Optional<ProcessHandle> orphan = ProcessHandle.of(Long.parseLong(firstLine))
                    .filter(process -> process.info().command().orElse("").contains("postgres"));
            if (orphan.isPresent()) {
                log.info("Stopping the database server a killed run left behind (process {})", firstLine);
                stop(orphan.get());
            }
        }
    }

    private static void stop(ProcessHandle process) throws IOException {
        process.destroy();
        try {
            process.onExit().get(30, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while stopping process " + process.pid(), e);
        } catch (ExecutionException | TimeoutException e) {
            throw new IOException("process " + process.pid() + " did not stop", e);
        }
    }
}
