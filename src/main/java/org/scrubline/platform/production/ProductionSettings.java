package org.scrubline.platform.production;

import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.scrubline.platform.database.DatabaseKind;
import org.springframework.boot.context.properties.bind.Bindable;
import org.springframework.boot.context.properties.bind.Binder;
import org.springframework.core.env.Environment;
import org.springframework.core.env.Profiles;

/** What in the settings would put real records at risk. Looks at settings alone: no database, no network. */
final class ProductionSettings {

    private static final int SHORTEST_PASSWORD = 16;
    private static final Set<String> ALONE = Set.of("localhost", "127.0.0.1", "[::1]");

    /** When a rule is broken, and what to do. */
    private record Rule(Predicate<Environment> broken, String sentence) {}

    private static final List<Rule> RULES = List.of(
            new Rule(
                    settings -> settings.acceptsProfiles(Profiles.of("demo")),
                    "The demo profile makes accounts with a known password: take it out of spring.profiles.active."),
            new Rule(
                    settings -> !text(settings, "scrubline.web.origin").startsWith("https://"),
                    "Set scrubline.web.origin to the address people open; it must begin with https://."),
            new Rule(
                    settings -> !answersToItsOwnName(settings),
                    "Set scrubline.web.hosts to the host names this server answers to, that of scrubline.web.origin among"
                            + " them: a request could otherwise call it by a name of somebody else."),
            new Rule(
                    settings -> !encrypts(settings) && !behindProxy(settings),
                    "Passwords would travel readable: set server.ssl.bundle (or server.ssl.certificate and its key), or, behind"
                            + " a proxy that ends TLS, server.forward-headers-strategy=native."),
            new Rule(
                    settings -> !settings.getProperty("server.servlet.session.cookie.secure", Boolean.class, false),
                    "The session's cookie would travel readable: take server.servlet.session.cookie.secure=false out."),
            new Rule(
                    settings -> text(settings, "scrubline.ledger.origin").equals("scrubline"),
                    "Set scrubline.ledger.origin to a name of your own, such as records.hospital.example: it stands on every"
                            + " checkpoint of the evidence, and the default is everybody's."),
            new Rule(
                    settings -> ownServer(settings)
                            && Stream.of("datasource", "flyway").anyMatch(role -> weak(settings, role)),
                    "spring.datasource.password and spring.flyway.password must each have " + SHORTEST_PASSWORD
                            + " characters or more, differ, and be none of the user names."),
            new Rule(
                    settings -> ownServer(settings) && readableLine(text(settings, "spring.datasource.url")),
                    "The line to the database would be readable: add sslmode=verify-full to spring.datasource.url."),
            new Rule(
                    settings -> !text(settings, "management.endpoints.web.exposure.include")
                            .strip()
                            .equals("health"),
                    "Nothing of the server's inside may be on the net: leave management.endpoints.web.exposure.include at"
                            + " health."),
            new Rule(
                    settings -> Stream.of("server.error", "spring.web.error")
                            .flatMap(group -> Stream.of(group + ".include-stacktrace", group + ".include-message"))
                            .anyMatch(
                                    name -> !settings.getProperty(name, "never").equalsIgnoreCase("never")),
                    "Error pages would show how the server is made: leave include-stacktrace and include-message at never."));

    private ProductionSettings() {}

    /** One sentence for each reason not to start; empty when there is none. */
    static List<String> problems(Environment settings) {
        return RULES.stream()
                .filter(rule -> rule.broken().test(settings))
                .map(Rule::sentence)
                .toList();
    }

    private static boolean answersToItsOwnName(Environment settings) {
        List<String> hosts = Binder.get(settings)
                .bind("scrubline.web.hosts", Bindable.listOf(String.class))
                .orElseGet(List::of);
        String own = host(text(settings, "scrubline.web.origin"));
        return hosts.stream().anyMatch(host -> host.strip().equalsIgnoreCase(own));
    }

    private static boolean encrypts(Environment settings) {
        return settings.getProperty("server.ssl.enabled", Boolean.class, true)
                && Stream.of("bundle", "certificate", "key-store")
                        .anyMatch(name -> !text(settings, "server.ssl." + name).isEmpty());
    }

    private static boolean behindProxy(Environment settings) {
        return Set.of("native", "framework")
                .contains(text(settings, "server.forward-headers-strategy").toLowerCase(Locale.ROOT));
    }

    private static boolean ownServer(Environment settings) {
        return DatabaseKind.of(settings) == DatabaseKind.OWN_SERVER;
    }

    private static boolean weak(Environment settings, String role) {
        String password = text(settings, "spring." + role + ".password");
        String other = text(settings, "spring." + (role.equals("flyway") ? "datasource" : "flyway") + ".password");
        return password.length() < SHORTEST_PASSWORD
                || password.equals(other)
                || password.equals(text(settings, "spring.datasource.username"))
                || password.equals(text(settings, "spring.flyway.user"));
    }

    private static boolean readableLine(String url) {
        boolean alone = ALONE.contains(host(url));
        return !alone && Stream.of("sslmode=verify-full", "sslmode=verify-ca").noneMatch(url::contains);
    }

    /** Empty for an address that names none or several, which then counts as another machine. */
    private static String host(String url) {
        try {
            String host = URI.create(url.replaceFirst("^jdbc:", "")).getHost();
            return host == null ? "" : host;
        } catch (IllegalArgumentException e) {
            return "";
        }
    }

    private static String text(Environment settings, String name) {
        return settings.getProperty(name, "");
    }
}
