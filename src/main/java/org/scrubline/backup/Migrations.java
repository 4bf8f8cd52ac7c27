package org.scrubline.backup;

import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.configuration.FluentConfiguration;
import org.scrubline.platform.database.DatabaseLogin;
import org.springframework.boot.context.properties.bind.Bindable;
import org.springframework.boot.context.properties.bind.Binder;
import org.springframework.core.env.Environment;

/** The schema's versions this program knows, and the way to each of them. */
final class Migrations {

    private final DatabaseLogin owner;
    private final String[] locations;
    private final Map<String, String> placeholders;

    Migrations(DatabaseLogin owner, Environment settings) {
        this.owner = owner;
        this.locations = settings.getRequiredProperty("spring.flyway.locations", String[].class);
        this.placeholders = Binder.get(settings)
                .bind("spring.flyway.placeholders", Bindable.mapOf(String.class, String.class))
                .orElse(Map.of());
    }

    /** The newest version this program can make. */
    MigrationVersion newest() {
        return Arrays.stream(configured().load().info().all())
                .filter(migration -> migration.getState().isResolved())
                .map(MigrationInfo::getVersion)
                .filter(Objects::nonNull)
                .max(MigrationVersion::compareTo)
                .orElse(MigrationVersion.EMPTY);
    }

    /** Removes whatever tables there are and makes those of the version. */
    void begin(MigrationVersion version) {
        configured().cleanDisabled(false).load().clean();
        configured().target(version).load().migrate();
    }

    void toNewest() {
        configured().load().migrate();
    }

    private FluentConfiguration configured() {
        return Flyway.configure()
                .dataSource(owner.url(), owner.user(), owner.password())
                .locations(locations)
                .placeholders(placeholders)
                .failOnMissingLocations(false);
    }
}
