package org.scrubline.platform.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.springframework.core.env.Environment;

/**
 * The database of an installation as a command finds it: the server named in the settings, the bundled one of a running
 * Scrubline, or the bundled one started for the command and stopped with it.
 */
public final class CommandDatabase implements AutoCloseable {

    private static final String SUPERUSER = "postgres";

    private final DatabaseLogin runtime;
    private final DatabaseLogin owner;
    private final DatabaseLogin widest;
    private final @Nullable EmbeddedPostgres started;

    private CommandDatabase(
            DatabaseLogin runtime, DatabaseLogin owner, DatabaseLogin widest, @Nullable EmbeddedPostgres started) {
        this.widest = widest;
        this.runtime = runtime;
        this.owner = owner;
        this.started = started;
        if (started != null) {
            Runtime.getRuntime().addShutdownHook(new Thread(this::close, "stop-command-database"));
        }
    }

    /**
     * For reading: a running server may keep running.
     *
     * @param settings as the server would read them
     * @throws DatabaseUnusable with a sentence for the operator, also when there is no installation yet
     */
    public static CommandDatabase beside(Environment settings) throws IOException, SQLException {
        if (DatabaseKind.of(settings) == DatabaseKind.OWN_SERVER) {
            return ownServer(settings);
        }
        Path root = directory(settings);
        Path data = root.resolve("pg");
        if (!Files.exists(data.resolve("PG_VERSION"))) {
            throw new DatabaseUnusable("There is no installation in " + root
                    + ". Name its directory with --scrubline.data-directory=DIR.");
        }
        return RunningServer.holds(data) ? running(new DataDirectory(root)) : start(root);
    }

    /**
     * For writing: no server may be running. A missing installation is created.
     *
     * @param settings as the server would read them
     * @throws DatabaseUnusable with a sentence for the operator, also when a server is running
     */
    public static CommandDatabase alone(Environment settings) throws IOException, SQLException {
        if (DatabaseKind.of(settings) == DatabaseKind.OWN_SERVER) {
            return ownServer(settings);
        }
        Path root = directory(settings);
        if (RunningServer.holds(root.resolve("pg"))) {
            throw new DatabaseUnusable("A running Scrubline uses " + root + ". Stop it first.");
        }
        return start(root);
    }

    /** The role the server works as. */
    public DatabaseLogin runtime() {
        return runtime;
    }

    /** The role that owns the tables. */
    public DatabaseLogin owner() {
        return owner;
    }

    /** The role that sees most: past the wall between organisations in the bundled database, else that of the server. */
    public DatabaseLogin widest() {
        return widest;
    }

    @Override
    public void close() {
        if (started != null) {
            try {
                started.close();
            } catch (IOException e) {
                throw new DatabaseUnusable("The bundled database did not stop: " + e.getMessage());
            }
        }
    }

    private static Path directory(Environment settings) {
        return Path.of(settings.getRequiredProperty("scrubline.data-directory"))
                .toAbsolutePath()
                .normalize();
    }

    private static CommandDatabase ownServer(Environment settings) {
        String url = settings.getRequiredProperty("spring.datasource.url");
        String user = settings.getProperty("spring.datasource.username", "");
        String password = settings.getProperty("spring.datasource.password", "");
        DatabaseLogin runtime = new DatabaseLogin(url, user, password);
        return new CommandDatabase(
                runtime,
                new DatabaseLogin(
                        settings.getProperty("spring.flyway.url", url),
                        settings.getProperty("spring.flyway.user", user),
                        settings.getProperty("spring.flyway.password", password)),
                runtime,
                null);
    }

    private static CommandDatabase running(DataDirectory directory) throws IOException {
        OptionalInt port = RunningServer.port(directory.database());
        if (port.isEmpty()) {
            throw new DatabaseUnusable("The Scrubline that uses " + directory.root()
                    + " is just starting or stopping. Try again in a moment.");
        }
        return at(port.getAsInt(), directory, null);
    }

    private static CommandDatabase start(Path root) throws IOException, SQLException {
        DataDirectory directory = DataDirectory.prepare(root);
        String secret = directory.readOrCreateSecret();
        EmbeddedPostgres server = EmbeddedPostgresServer.start(directory, secret);
        try (Connection superuser = server.getPostgresDatabase().getConnection()) {
            DatabaseRoles.ensure(superuser, secret);
            return at(server.getPort(), directory, server);
        } catch (SQLException | IOException | RuntimeException e) {
            server.close();
            throw e;
        }
    }

    private static CommandDatabase at(int port, DataDirectory directory, @Nullable EmbeddedPostgres started)
            throws IOException {
        String secret = directory.readOrCreateSecret();
        DatabaseAddress address = new DatabaseAddress("127.0.0.1", port, secret);
        DatabaseLogin runtime = DatabaseLogin.of(address.runtime());
        return new CommandDatabase(
                runtime,
                DatabaseLogin.of(address.migrations()),
                new DatabaseLogin(runtime.url(), SUPERUSER, secret),
                started);
    }
}
