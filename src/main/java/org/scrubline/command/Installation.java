package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
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

    private final Options options;
    private final @Nullable LocalDatabase local;

    private Installation(Options options, @Nullable LocalDatabase local) {
        this.options = options;
        this.local = local;
    }

    static Installation open(Options options) throws IOException {
        // What the libraries tell belongs to the server's log, not between the lines of an answer.
        LoggingSystem.get(Installation.class.getClassLoader())
                .setLogLevel(LoggingSystem.ROOT_LOGGER_NAME, LogLevel.WARN);
        boolean named = options.setting("spring.datasource.url").isPresent();
        return new Installation(options, named ? null : LocalDatabase.open(dataDirectory(options)));
    }

    private static Path dataDirectory(Options options) {
        return Options.path(options.setting("scrubline.data-directory").orElse(DATA));
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
                options.setting("spring.datasource.url").orElseThrow(),
                options.setting("spring.datasource.username").orElse(""),
                options.setting("spring.datasource.password").orElse(""));
    }

    /** The file with the signing key, where this machine has it. */
    Optional<Path> keyFile() {
        Optional<Path> named = options.setting("scrubline.ledger.key-file").map(Options::path);
        Optional<Path> usual = local == null
                ? Optional.empty()
                : Optional.of(dataDirectory(options).resolve("ledger.key"));
        return named.or(() -> usual).filter(Files::isReadable);
    }

    @Override
    public void close() throws IOException {
        if (local != null) {
            local.close();
        }
    }
}
