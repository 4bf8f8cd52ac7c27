package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.database.LocalDatabase;
import org.springframework.boot.logging.LogLevel;
import org.springframework.boot.logging.LoggingSystem;

/**
 * The database of an installation, read only: the bundled one, whether the server runs or not, or the server that
 * {@code spring.datasource.url} names.
 */
final class Installation implements AutoCloseable {

    private static final String DATA = "./data/scrubline";

    private final ServerSettings settings;
    private final @Nullable LocalDatabase local;

    private Installation(ServerSettings settings) throws IOException {
        this.settings = settings;
        local = settings.one("spring.datasource.url").isPresent() ? null : LocalDatabase.open(dataDirectory());
    }

    static Installation open(ServerSettings settings) throws IOException {
        // What the libraries tell belongs to the server's log, not between the lines of an answer.
        LoggingSystem.get(Installation.class.getClassLoader())
                .setLogLevel(LoggingSystem.ROOT_LOGGER_NAME, LogLevel.WARN);
        return new Installation(settings);
    }

    private Path dataDirectory() {
        return path(settings.one("scrubline.data-directory").orElse(DATA));
    }

    /** A connection whose transaction reads one moment and changes nothing. */
    Connection connect() throws SQLException {
        Connection connection = local == null ? server() : local.connect();
        connection.setAutoCommit(false);
        connection.setReadOnly(true);
        connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        return connection;
    }

    private Connection server() throws SQLException {
        return DriverManager.getConnection(
                settings.one("spring.datasource.url").orElseThrow(),
                settings.one("spring.datasource.username").orElse(""),
                settings.one("spring.datasource.password").orElse(""));
    }

    /** The file with the signing key, where this machine has it. */
    Optional<Path> keyFile() {
        Optional<Path> named = settings.one("scrubline.ledger.key-file").map(Installation::path);
        Optional<Path> usual =
                local == null ? Optional.empty() : Optional.of(dataDirectory().resolve("ledger.key"));
        return named.or(() -> usual).filter(Files::isReadable);
    }

    private static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException noPath) {
            throw new WrongUse(name + " is not a usable file name.");
        }
    }

    @Override
    public void close() throws IOException {
        if (local != null) {
            local.close();
        }
    }
}
