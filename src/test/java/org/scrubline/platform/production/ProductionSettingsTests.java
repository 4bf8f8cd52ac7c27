package org.scrubline.platform.production;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.context.config.ConfigDataEnvironmentPostProcessor;
import org.springframework.core.env.Environment;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.StandardEnvironment;

/** Every reason not to start, beside the settings of which nothing is wrong. */
class ProductionSettingsTests {

    private static final Map<String, String> SAFE = Map.of(
            "spring.profiles.active", "production",
            "scrubline.web.origin", "https://scrubline.hospital.example",
            "scrubline.web.hosts", "scrubline.hospital.example,records.hospital.example",
            "server.forward-headers-strategy", "native",
            "scrubline.ledger.origin", "records.hospital.example");

    private static final Map<String, String> OWN_SERVER = Map.of(
            "spring.datasource.url", "jdbc:postgresql://db.hospital.example/scrubline?sslmode=verify-full",
            "spring.datasource.username", "scrubline_app",
            "spring.datasource.password", "a long random sentence",
            "spring.flyway.user", "scrubline_owner",
            "spring.flyway.password", "another random sentence");

    @TempDir
    Path directory;

    @Test
    void safeSettingsStart() {
        assertThat(problems(SAFE)).isEmpty();
        assertThat(problems(with(SAFE, OWN_SERVER))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "spring.profiles.active|production,demo|demo profile",
                "scrubline.web.origin|http://scrubline.hospital.example|must begin with https://",
                "scrubline.web.hosts|''|host names this server answers to",
                "scrubline.web.hosts|elsewhere.example|host names this server answers to",
                "server.forward-headers-strategy|none|Passwords would travel readable",
                "server.forward-headers-strategy|''|Passwords would travel readable",
                "server.servlet.session.cookie.secure|false|cookie would travel readable",
                "scrubline.ledger.origin|scrubline|a name of your own",
                "management.endpoints.web.exposure.include|health,env|leave management.endpoints",
                "management.endpoints.web.exposure.include|*|leave management.endpoints",
                "server.error.include-stacktrace|always|Error pages would show",
                "spring.web.error.include-message|on_param|Error pages would show"
            })
    void eachUnsafeSettingIsRefusedWithItsOwnSentence(String name, String value, String sentence) {
        assertThat(problems(with(SAFE, Map.of(name, value))))
                .singleElement()
                .asString()
                .contains(sentence);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "spring.datasource.password|short|must each have 16 characters",
                "spring.flyway.password|''|must each have 16 characters",
                "spring.datasource.password|another random sentence|must each have 16 characters",
                "spring.datasource.url|jdbc:postgresql://db.hospital.example/scrubline|sslmode=verify-full",
                "spring.datasource.url|jdbc:postgresql://db.hospital.example/scrubline?sslmode=prefer|sslmode=verify-full",
                "spring.datasource.url|jdbc:postgresql://one,two/scrubline|sslmode=verify-full"
            })
    void soIsEachUnsafeSettingOfADatabaseServer(String name, String value, String sentence) {
        Map<String, String> settings = with(with(SAFE, OWN_SERVER), Map.of(name, value));
        assertThat(problems(settings)).singleElement().asString().contains(sentence);
    }

    @ParameterizedTest
    @ValueSource(strings = {"localhost", "127.0.0.1", "[::1]"})
    void aDatabaseOnTheSameMachineNeedsNoEncryptedLine(String host) {
        Map<String, String> url = Map.of("spring.datasource.url", "jdbc:postgresql://" + host + ":5432/scrubline");
        assertThat(problems(with(with(SAFE, OWN_SERVER), url))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"server.ssl.bundle", "server.ssl.certificate", "server.ssl.key-store"})
    void aServerThatEncryptsItselfNeedsNoProxy(String name) {
        Map<String, String> own = new HashMap<>(with(SAFE, Map.of(name, "here")));
        own.remove("server.forward-headers-strategy");
        assertThat(problems(own)).isEmpty();
        assertThat(problems(with(own, Map.of("server.ssl.enabled", "false")))).hasSize(1);
    }

    @Test
    void everythingThatIsWrongIsSaidAtOnce() {
        assertThat(problems(Map.of("spring.profiles.active", "production,demo")))
                .hasSize(5)
                .allMatch(sentence -> sentence.length() > 40);
    }

    @Test
    void theProfileAsksForASecondFactorAndForACookieOfThisHostAlone() {
        Environment production = settings(SAFE);
        assertThat(production.getProperty("scrubline.second-factor.roles[0]")).isEqualTo("ADMINISTRATOR");
        assertThat(production.getProperty("scrubline.second-factor.roles[1]")).isEqualTo("DIRECTOR");
        assertThat(production.getProperty("server.servlet.session.cookie.name")).startsWith("__Host-");
        assertThat(production.getProperty("server.servlet.session.cookie.domain"))
                .isNull();
        assertThat(settings(Map.of()).getProperty("scrubline.second-factor.roles[0]"))
                .isNull();
    }

    @Test
    void secretsAreReadFromFilesOfTheirName() throws IOException {
        Files.writeString(directory.resolve("spring.datasource.password"), "a secret of a file\n");
        Map<String, String> named = Map.of("SCRUBLINE_SECRETS_DIRECTORY", directory + "/");
        assertThat(settings(with(SAFE, named)).getProperty("spring.datasource.password"))
                .isEqualTo("a secret of a file");
        assertThat(settings(SAFE).getProperty("spring.datasource.password")).isNull();
    }

    private static List<String> problems(Map<String, String> set) {
        return ProductionSettings.problems(settings(set));
    }

    /** As the server reads them: what was set, then the files of the profiles. */
    private static Environment settings(Map<String, String> set) {
        StandardEnvironment environment = new StandardEnvironment();
        environment.getPropertySources().addFirst(new MapPropertySource("set", new HashMap<>(set)));
        ConfigDataEnvironmentPostProcessor.applyTo(environment);
        return environment;
    }

    private static Map<String, String> with(Map<String, String> one, Map<String, String> other) {
        Map<String, String> both = new HashMap<>(one);
        both.putAll(other);
        return both;
    }
}
