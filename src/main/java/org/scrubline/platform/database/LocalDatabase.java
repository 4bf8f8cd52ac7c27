package org.scrubline.platform.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The bundled database as a command reaches it: through the server that runs on the data directory, or by starting one
 * for the time of the command.
 */
public final class LocalDatabase implements AutoCloseable {

    private static final String SUPERUSER = "postgres";
    /** Line of postmaster.pid that holds the port; PostgreSQL documents the file with pg_ctl. */
    private static final int PORT_LINE = 3;

    private final @Nullable EmbeddedPostgres started;
    private final int port;
    private final String secret;

    private LocalDatabase(@Nullable EmbeddedPostgres started, int port, String secret) {
        this.started = started;
        this.port = port;
        this.secret = secret;
    }

    /**
     * Opens the database of a data directory.
     *
     * @throws DatabaseUnusable when there is none; the message is a sentence for the operator
     */
    public static LocalDatabase open(Path dataDirectory) throws IOException {
        DataDirectory directory =
                new DataDirectory(dataDirectory.toAbsolutePath().normalize());
        if (!Files.exists(directory.database().resolve("PG_VERSION")) || !Files.exists(directory.secret())) {
            throw new DatabaseUnusable("There is no Scrubline data in " + directory.root()
                    + ". Name its folder with --scrubline.data-directory=FOLDER.");
        }
        String secret = directory.readOrCreateSecret();
        Optional<Integer> running = runningPort(directory.database().resolve("postmaster.pid"));
        if (running.isPresent()) {
            return new LocalDatabase(null, running.get(), secret);
        }
        EmbeddedPostgres server = EmbeddedPostgresServer.start(directory, secret);
        return new LocalDatabase(server, server.getPort(), secret);
    }

    private static Optional<Integer> runningPort(Path pidFile) throws IOException {
        if (!Files.exists(pidFile)) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(pidFile);
        boolean whole = lines.size() > PORT_LINE && lines.get(0).strip().matches("\\d+");
        return whole && ProcessHandle.of(Long.parseLong(lines.get(0).strip())).isPresent()
                ? Optional.of(Integer.parseInt(lines.get(PORT_LINE).strip()))
                : Optional.empty();
    }

    /** A superuser's connection, who sees past the wall between organisations. */
    public Connection connect() throws SQLException {
        String url = "jdbc:postgresql://127.0.0.1:" + port + "/" + DatabaseRoles.DATABASE;
        return DriverManager.getConnection(url, SUPERUSER, secret);
    }

    @Override
    public void close() throws IOException {
        if (started != null) {
            started.close();
        }
    }
}
