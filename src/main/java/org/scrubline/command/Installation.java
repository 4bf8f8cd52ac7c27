package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.scrubline.platform.database.CommandDatabase;
import org.scrubline.platform.database.DatabaseKind;
import org.springframework.boot.logging.LogLevel;
import org.springframework.boot.logging.LoggingSystem;
import org.springframework.core.env.Environment;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.StandardEnvironment;

/** The database of an installation, read only, and its key file. */
final class Installation implements AutoCloseable {

    private static final String DATA = "scrubline.data-directory";
    private static final String KEY = "scrubline.ledger.key-file";
    private static final List<String> SETTINGS =
            List.of(KEY, "spring.datasource.url", "spring.datasource.username", "spring.datasource.password");

    private final Environment settings;
    private final CommandDatabase database;

    private Installation(Environment settings, CommandDatabase database) {
        this.settings = settings;
        this.database = database;
    }

    static Installation open(ServerSettings given) throws IOException, SQLException {
        // What the libraries tell belongs to the server's log, not between the lines of an answer.
        LoggingSystem.get(Installation.class.getClassLoader())
                .setLogLevel(LoggingSystem.ROOT_LOGGER_NAME, LogLevel.WARN);
        Environment settings = settings(given);
        return new Installation(settings, CommandDatabase.beside(settings));
    }

    /** What the line and the environment say, nothing else. */
    private static Environment settings(ServerSettings given) {
        Map<String, Object> values = new HashMap<>();
        values.put(DATA, path(given.one(DATA).orElse("./data/scrubline")).toString());
        SETTINGS.forEach(name -> given.one(name).ifPresent(value -> values.put(name, value)));
        StandardEnvironment settings = new StandardEnvironment();
        settings.getPropertySources()
                .forEach(source -> settings.getPropertySources().remove(source.getName()));
        settings.getPropertySources().addFirst(new MapPropertySource("line", values));
        return settings;
    }

    /** A connection whose transaction reads one moment and changes nothing. */
    Connection connect() throws SQLException {
        Connection connection = database.widest().open();
        connection.setAutoCommit(false);
        connection.setReadOnly(true);
        connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        return connection;
    }

    /** The file with the signing key, where this machine has it. */
    Optional<Path> keyFile() {
        Optional<Path> named = Optional.ofNullable(settings.getProperty(KEY)).map(Installation::path);
        Optional<Path> usual = DatabaseKind.of(settings) == DatabaseKind.OWN_SERVER
                ? Optional.empty()
                : Optional.of(Path.of(settings.getRequiredProperty(DATA)).resolve("ledger.key"));
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
    public void close() {
        database.close();
    }
}
