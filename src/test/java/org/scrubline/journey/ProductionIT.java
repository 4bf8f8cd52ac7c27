package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.platform.database.DatabaseRoles;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The packaged server in the production profile, as an operator starts it: refused in one sentence, or safe. */
class ProductionIT {

    private static final String HOST = "scrubline.hospital.example";
    private static final String SECRET = "secret of the production test";

    private static final List<String> SAFE = List.of(
            "--spring.profiles.active=production",
            "--scrubline.web.origin=https://" + HOST,
            "--scrubline.web.hosts=" + HOST,
            "--server.forward-headers-strategy=native",
            "--scrubline.ledger.origin=records.hospital.example");

    /** What a proxy that ends TLS says of the request it passes on. */
    private static final Map<String, String> BY_THE_PROXY =
            Map.of("Host", HOST, "X-Forwarded-Proto", "https", "X-Forwarded-Port", "443");

    @TempDir
    Path directory;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--scrubline.web.hosts=|Set scrubline.web.hosts to the host names this server answers to",
                "--server.forward-headers-strategy=none|Passwords would travel readable",
                "--scrubline.ledger.origin=scrubline|Set scrubline.ledger.origin to a name of your own"
            })
    void anUnsafeSettingIsRefusedInOneSentenceBeforeAnythingIsOpened(String setting, String sentence) {
        String name = setting.substring(0, setting.indexOf('=') + 1);
        List<String> options = new ArrayList<>(
                SAFE.stream().filter(safe -> !safe.startsWith(name)).toList());
        options.add(setting);
        ServerProcess.Ended ended = ServerProcess.refused(directory, options.toArray(String[]::new));
        assertThat(ended.exit()).isNotZero();
        assertThat(ended.printed())
                .containsOnlyOnce(sentence)
                .doesNotContain("\tat ", "\\tat ", "Exception", "stack_trace", "HikariPool");
        assertThat(directory).isEmptyDirectory();
    }

    @Test
    void safeSettingsStartOnADatabaseServerAndTheCookieIsOfThisHostAlone() throws Exception {
        try (EmbeddedPostgres database = durable();
                ServerProcess server = ServerProcess.start(directory, options(database))) {
            URI address = URI.create(server.address());
            RawRequest.Answer health = health(address);
            assertThat(health.status()).isEqualTo(200);
            assertThat(health.body()).contains("\"status\":\"UP\"");

            RawRequest.Answer logIn = RawRequest.get(address, "/login", BY_THE_PROXY);
            assertThat(logIn.status()).isEqualTo(200);
            assertThat(logIn.headers())
                    .containsPattern("Set-Cookie: __Host-SCRUBLINE=[^;]+; Path=/; Secure; HttpOnly; SameSite=Lax")
                    .doesNotContain("Domain=")
                    .containsPattern("Strict-Transport-Security: max-age=31536000 ; includeSubDomains");
            assertThat(RawRequest.get(address, "/to-score", BY_THE_PROXY).headers())
                    .contains("Location: https://" + HOST + "/login");
            assertThat(RawRequest.get(address, "/login", Map.of("Host", "elsewhere.example"))
                            .status())
                    .isEqualTo(400);
            assertThat(RawRequest.get(address, "/nothing\u001b[31m\"here", BY_THE_PROXY)
                            .status())
                    .isBetween(400, 404);
            everyLineIsOneEntry(server.log());
        }
    }

    /** A server that listens is not ready yet; whoever watches one asks again. */
    private static RawRequest.Answer health(URI address) throws InterruptedException {
        Map<String, String> json = Map.of("Accept", "application/json");
        long end = System.nanoTime() + Duration.ofSeconds(60).toNanos();
        RawRequest.Answer answer = RawRequest.get(address, "/actuator/health", json);
        while (answer.status() == 503 && System.nanoTime() < end) {
            Thread.sleep(100);
            answer = RawRequest.get(address, "/actuator/health", json);
        }
        return answer;
    }

    /** But for the words to whoever opens an empty server, which no log should keep. */
    private static void everyLineIsOneEntry(String log) {
        int notice = log.indexOf("  This server is empty.");
        assertThat(notice).isPositive();
        String entries = log.substring(0, notice)
                + log.substring(notice).replaceFirst("(?s)^ {2}This server is empty\\.[^\n]*\n\n {6}\\S+\n", "");
        List<JsonNode> read = entries.lines()
                .filter(line -> !line.isBlank())
                .map(line -> JsonMapper.shared().readTree(line))
                .toList();
        assertThat(read).hasSizeGreaterThan(3).allSatisfy(entry -> {
            assertThat(entry.isObject()).isTrue();
            assertThat(entry.propertyNames()).contains("@timestamp", "message");
        });
    }

    /** The server of the other tests is made for speed and would be refused. */
    private static EmbeddedPostgres durable() throws IOException {
        return EmbeddedPostgres.builder()
                .setPGStartupWait(Duration.ofSeconds(60))
                .setLocaleConfig("locale-provider", "builtin")
                .setLocaleConfig("locale", "C.UTF-8")
                .setServerConfig("fsync", "on")
                .setServerConfig("full_page_writes", "on")
                .setServerConfig("synchronous_commit", "on")
                .start();
    }

    private String[] options(EmbeddedPostgres database) throws SQLException {
        try (Connection superuser =
                DriverManager.getConnection(database.getJdbcUrl("postgres", "postgres"), "postgres", "postgres")) {
            DatabaseRoles.ensure(superuser, SECRET);
        }
        List<String> options = new ArrayList<>(SAFE);
        options.addAll(List.of(
                "--spring.datasource.url=jdbc:postgresql://127.0.0.1:" + database.getPort() + "/"
                        + DatabaseRoles.DATABASE,
                "--spring.datasource.username=" + DatabaseRoles.RUNTIME,
                "--spring.datasource.password=" + DatabaseRoles.password(SECRET, DatabaseRoles.RUNTIME),
                "--spring.flyway.user=" + DatabaseRoles.OWNER,
                "--spring.flyway.password=" + DatabaseRoles.password(SECRET, DatabaseRoles.OWNER),
                "--scrubline.ledger.key-file=" + directory.resolve("ledger.key")));
        return options.toArray(String[]::new);
    }
}
