package org.scrubline.platform.provider;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.scrubline.platform.UnsafeSettings;
import org.scrubline.platform.provider.ConnectionSettings.Given;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.stereotype.Component;

/** The connections of this installation; none unless its settings name some. */
@Component
@EnableConfigurationProperties(ConnectionSettings.class)
public class Connections {

    private static final String SETTING = "scrubline.single-sign-on.connections.";
    private static final Set<String> ALONE = Set.of("localhost", "127.0.0.1", "[::1]");

    private final List<Connection> all = new ArrayList<>();

    Connections(ConnectionSettings settings) {
        List<String> problems = new ArrayList<>();
        settings.connections().forEach((name, given) -> add(name, given, problems));
        if (all.stream().map(Connection::organisation).distinct().count() < all.size()) {
            problems.add(SETTING + "*: one organisation has one connection.");
        }
        if (!problems.isEmpty()) {
            throw new UnsafeSettings(problems);
        }
    }

    private void add(String name, Given given, List<String> problems) {
        UUID organisation = given.organisation();
        if (!name.matches("[a-z0-9-]{1,40}")) {
            problems.add(SETTING + name + ": a name has 1 to 40 small letters, digits or hyphens.");
        } else if (!trusted(given.issuer())) {
            problems.add(SETTING + name + ".issuer must be the provider's address; it must begin with https://.");
        } else if (organisation == null
                || given.clientId().isBlank()
                || given.clientSecret().isBlank()) {
            problems.add(SETTING + name + " needs organisation, client-id and client-secret.");
        } else {
            all.add(new Connection(
                    name,
                    organisation,
                    given.label().isBlank() ? name : given.label().strip(),
                    given.issuer(),
                    given.clientId(),
                    given.clientSecret().strip(),
                    given.secondFactor(),
                    given.provisioned()));
        }
    }

    /** Encrypted, or on this machine. */
    private static boolean trusted(String issuer) {
        try {
            URI address = URI.create(issuer);
            String host = Optional.ofNullable(address.getHost()).orElse("");
            return Map.of("https", !host.isEmpty(), "http", ALONE.contains(host))
                    .getOrDefault(String.valueOf(address.getScheme()), false);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    public List<Connection> all() {
        return List.copyOf(all);
    }

    public Optional<Connection> named(String name) {
        return all.stream().filter(one -> one.name().equals(name)).findFirst();
    }

    public Optional<Connection> of(UUID organisation) {
        return all.stream()
                .filter(one -> one.organisation().equals(organisation))
                .findFirst();
    }
}
