package org.scrubline.doors;

import java.time.Instant;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import no.nav.security.mock.oauth2.MockOAuth2Server;
import no.nav.security.mock.oauth2.OAuth2Config;
import no.nav.security.mock.oauth2.token.KeyProvider;
import no.nav.security.mock.oauth2.token.OAuth2TokenProvider;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

/** A provider of identities, written by others, that runs on this machine and plays two issuers. */
final class RunningProvider implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    /** The organisations of the two connections. */
    static final UUID ORLIN = UUID.fromString("7f0c2d3e-52f1-4b0c-9f5e-0a1d6f2b7c11");

    static final UUID HALDEN = UUID.fromString("7f0c2d3e-52f1-4b0c-9f5e-0a1d6f2b7c12");

    /** An organisation whose provider does not answer. */
    static final UUID SILENT = UUID.fromString("7f0c2d3e-52f1-4b0c-9f5e-0a1d6f2b7c13");

    static final String CLIENT = "scrubline-at-orlin";
    static final KeyProvider KEYS = new KeyProvider();
    static final MockOAuth2Server SERVER = started();

    private static MockOAuth2Server started() {
        MockOAuth2Server server = new MockOAuth2Server(
                new OAuth2Config(
                        false,
                        null,
                        null,
                        false,
                        new OAuth2TokenProvider(KEYS, (Instant) null),
                        Set.of(new Vouching("orlin"), new Vouching("halden"))),
                new HandedToken());
        server.start();
        Runtime.getRuntime().addShutdownHook(new Thread(server::shutdown));
        return server;
    }

    static String issuer(String name) {
        return SERVER.issuerUrl(name).toString();
    }

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        Map<String, String> settings = Map.ofEntries(
                Map.entry("orlin.organisation", ORLIN.toString()),
                Map.entry("orlin.label", "Orlin house log-in"),
                Map.entry("orlin.issuer", issuer("orlin")),
                Map.entry("orlin.client-id", CLIENT),
                Map.entry("orlin.client-secret", "a secret of the connection"),
                Map.entry("orlin.second-factor", "mfa,urn:halden:two"),
                Map.entry("orlin.provisioned", "true"),
                Map.entry("halden.organisation", HALDEN.toString()),
                Map.entry("halden.issuer", issuer("halden")),
                Map.entry("halden.client-id", CLIENT),
                Map.entry("halden.client-secret", "another secret"),
                Map.entry("silent.organisation", SILENT.toString()),
                Map.entry("silent.issuer", "http://127.0.0.1:1/silent"),
                Map.entry("silent.client-id", CLIENT),
                Map.entry("silent.client-secret", "another secret"));
        settings.forEach(
                (key, value) -> TestPropertyValues.of("scrubline.single-sign-on.connections." + key + "=" + value)
                        .applyTo(context));
    }
}
