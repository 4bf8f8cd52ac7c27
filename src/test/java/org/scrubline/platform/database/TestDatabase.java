package org.scrubline.platform.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;

/**
 * One PostgreSQL for all tests of a run: a container where a Docker engine answers, else the embedded server. The
 * property {@code scrubline.test.database} (auto, container, embedded) forces one. A run says which it used.
 */
@TestConfiguration(proxyBeanMethods = false)
public class TestDatabase {

    private static final String SECRET = "secret-of-the-test-database";
    private static @Nullable Server server;

    /** A running server and how its superuser connects. */
    record Server(String host, int port, String superuserUrl, String superuser, String superuserPassword) {}

    @Bean
    DatabaseAddress databaseAddress() throws SQLException, IOException {
        Server running = server();
        return new DatabaseAddress(running.host(), running.port(), SECRET);
    }

    @Bean
    JdbcConnectionDetails jdbcConnectionDetails(DatabaseAddress address) {
        return address.runtime();
    }

    @Bean
    FlywayConnectionDetails flywayConnectionDetails(DatabaseAddress address) {
        return address.migrations();
    }

    /** A superuser's connection to the application's database, for tests that look past the wall. */
    public static Connection superuser() throws SQLException, IOException {
        return superuser(DatabaseRoles.DATABASE);
    }

    /** Makes a further, empty database on the server of the tests, as db/roles.sql makes one. */
    public static void createDatabase(String name) throws SQLException, IOException {
        Server running = server();
        try (Connection superuser = DriverManager.getConnection(
                        running.superuserUrl(), running.superuser(), running.superuserPassword());
                Statement statement = superuser.createStatement()) {
            statement.execute("create database " + name + " owner " + DatabaseRoles.OWNER);
            statement.execute("revoke all on database " + name + " from public");
            statement.execute("grant connect on database " + name + " to " + DatabaseRoles.RUNTIME);
        }
    }

    /** A superuser's connection to one of the databases made by {@link #createDatabase}. */
    public static Connection superuser(String name) throws SQLException, IOException {
        Server running = server();
        return DriverManager.getConnection(url(name), running.superuser(), running.superuserPassword());
    }

    /** What an operator would set to have such a database used, as {@code --name=value}. */
    public static List<String> settings(String name) throws SQLException, IOException {
        return List.of(
                "--spring.datasource.url=" + url(name),
                "--spring.datasource.username=" + DatabaseRoles.RUNTIME,
                "--spring.datasource.password=" + DatabaseRoles.password(SECRET, DatabaseRoles.RUNTIME),
                "--spring.flyway.user=" + DatabaseRoles.OWNER,
                "--spring.flyway.password=" + DatabaseRoles.password(SECRET, DatabaseRoles.OWNER));
    }

    private static String url(String name) throws SQLException, IOException {
        Server running = server();
        return "jdbc:postgresql://" + running.host() + ":" + running.port() + "/" + name;
    }

    private static synchronized Server server() throws SQLException, IOException {
        if (server == null) {
            server = start();
            try (Connection superuser = DriverManager.getConnection(
                    server.superuserUrl(), server.superuser(), server.superuserPassword())) {
                DatabaseRoles.ensure(superuser, SECRET);
            }
        }
        return server;
    }

    private static Server start() throws IOException {
        String wanted = System.getProperty("scrubline.test.database", "auto").toLowerCase(Locale.ROOT);
        boolean container = switch (wanted) {
            case "container" -> true;
            case "embedded" -> false;
            case "auto" -> dockerAnswers();
            default ->
                throw new IllegalArgumentException(
                        "scrubline.test.database is auto, container or embedded, not " + wanted);
        };
        System.out.println("Test database: PostgreSQL in " + (container ? "a container" : "this process (embedded)"));
        return container ? container() : embedded();
    }

    private static boolean dockerAnswers() {
        try {
            return DockerClientFactory.instance().isDockerAvailable();
        } catch (RuntimeException noEngine) {
            return false;
        }
    }

    @SuppressWarnings("resource") // lives as long as the test run, stopped by the hook
    private static Server container() {
        String image = System.getProperty("scrubline.test.database.image", "postgres:18");
        PostgreSQLContainer container =
                new PostgreSQLContainer(DockerImageName.parse(image).asCompatibleSubstituteFor("postgres"));
        container.start();
        Runtime.getRuntime().addShutdownHook(new Thread(container::stop));
        return new Server(
                container.getHost(),
                container.getMappedPort(PostgreSQLContainer.POSTGRESQL_PORT),
                container.getJdbcUrl(),
                container.getUsername(),
                container.getPassword());
    }

    @SuppressWarnings("resource") // lives as long as the test run, removed by the library's own hook
    private static Server embedded() throws IOException {
        EmbeddedPostgres postgres = EmbeddedPostgres.builder()
                .setPGStartupWait(Duration.ofSeconds(60))
                .setLocaleConfig("locale-provider", "builtin")
                .setLocaleConfig("locale", "C.UTF-8")
                .start();
        return new Server(
                "127.0.0.1", postgres.getPort(), postgres.getJdbcUrl("postgres", "postgres"), "postgres", "postgres");
    }
}
