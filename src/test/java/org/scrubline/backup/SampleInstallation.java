package org.scrubline.backup;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.flywaydb.core.api.MigrationVersion;
import org.scrubline.command.Commands;
import org.scrubline.platform.database.CommandDatabase;
import org.scrubline.platform.database.TestDatabase;
import org.springframework.boot.context.config.ConfigDataEnvironmentPostProcessor;
import org.springframework.core.env.Environment;
import org.springframework.core.env.SimpleCommandLinePropertySource;
import org.springframework.core.env.StandardEnvironment;

/** An installation of the test's own and the commands on it. */
final class SampleInstallation {

    static final String WITH_LATER_TABLES = "--spring.flyway.locations=classpath:db/migration,classpath:backup-later";

    private static final Path INVENTED = Path.of("src/test/resources/backups/invented.sql");
    private static final AtomicInteger DATABASES = new AtomicInteger();

    private final List<String> options;
    private final Superuser superuser;

    /** What a command left behind. */
    record Run(int exit, String out, String err) {}

    /** Work on an open database. */
    interface Work<T> {
        T with(Connection connection) throws SQLException, IOException;
    }

    private interface Superuser {
        Connection open() throws SQLException, IOException;
    }

    private SampleInstallation(List<String> options, Superuser superuser) {
        this.options = options;
        this.superuser = superuser;
    }

    /**
     * With a database of its own on the server of the tests.
     *
     * @param more further settings for every command
     */
    static SampleInstallation onServer(String... more) throws SQLException, IOException {
        String name = "sample_" + DATABASES.incrementAndGet();
        TestDatabase.createDatabase(name);
        return new SampleInstallation(
                joined(TestDatabase.settings(name), List.of(more)), () -> TestDatabase.superuser(name));
    }

    /**
     * With the bundled database; nothing is started or made yet.
     *
     * @param directory its data directory
     */
    static SampleInstallation bundled(Path directory, String... more) {
        return new SampleInstallation(
                joined(List.of("--scrubline.data-directory=" + directory), List.of(more)),
                () -> DriverManager.getConnection(
                        "jdbc:postgresql://127.0.0.1:"
                                + Files.readAllLines(directory.resolve("pg/postmaster.pid"))
                                        .get(3)
                                        .trim() + "/scrubline",
                        "postgres",
                        Files.readString(directory.resolve("pg.secret")).trim()));
    }

    /** The same installation with other settings. */
    SampleInstallation with(String... more) {
        return new SampleInstallation(joined(options, List.of(more)), superuser);
    }

    Environment settings() {
        StandardEnvironment settings = new StandardEnvironment();
        settings.getPropertySources().addFirst(new SimpleCommandLinePropertySource(options.toArray(String[]::new)));
        ConfigDataEnvironmentPostProcessor.applyTo(settings);
        return settings;
    }

    /** Makes the tables of a version. */
    SampleInstallation tables(MigrationVersion version) throws IOException, SQLException {
        try (CommandDatabase database = CommandDatabase.alone(settings())) {
            new Migrations(database.owner(), settings()).begin(version);
        }
        return this;
    }

    /** Puts the invented rows into the tables of the newest version. */
    SampleInstallation filled() throws IOException, SQLException {
        tables(MigrationVersion.LATEST);
        run(Files.readString(INVENTED));
        return this;
    }

    Run backup(Path out, String... more) {
        return command(joined(line("backup", "--out", out), List.of(more)));
    }

    Run restore(Path from, String... more) {
        return command(joined(line("restore", "--from", from), List.of(more)));
    }

    /** A command line on this installation. */
    List<String> line(String command, String fileOption, Path file) {
        return joined(List.of(command, fileOption, file.toString()), options);
    }

    private static Run command(List<String> line) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exit = Commands.run(line, new PrintStream(out, true), new PrintStream(err, true))
                .orElseThrow();
        return new Run(exit, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** Works past every wall on the running database. */
    <T> T superuser(Work<T> work) throws IOException, SQLException {
        try (Connection connection = superuser.open()) {
            return work.with(connection);
        }
    }

    /** Runs statements past every wall. */
    void run(String sql) throws IOException, SQLException {
        superuser(connection -> {
            try (Statement statement = connection.createStatement()) {
                return statement.execute(sql);
            }
        });
    }

    /** The first column of a query, asked past every wall. */
    List<String> column(String query) throws IOException, SQLException {
        return superuser(connection -> {
            try (Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery(query)) {
                List<String> values = new ArrayList<>();
                while (rows.next()) {
                    values.add(rows.getString(1));
                }
                return values;
            }
        });
    }

    private static List<String> joined(List<String> first, List<String> second) {
        return Stream.concat(first.stream(), second.stream()).toList();
    }
}
