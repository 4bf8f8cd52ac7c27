package org.scrubline.backup;

import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** Tells monitoring about the newest backup. Never down: an old backup must not take the server off the net. */
@Component
class BackupHealthIndicator implements HealthIndicator {

    private final Installation installation;

    BackupHealthIndicator(Installation installation) {
        this.installation = installation;
    }

    @Override
    public Health health() {
        BackupAge newest = installation.newestBackup();
        Health.Builder health = Health.up().withDetail("state", newest.state().name());
        if (newest.created() != null && newest.age() != null) {
            health.withDetail("newest", newest.created().toString())
                    .withDetail("ageHours", newest.age().toHours())
                    .withDetail("bytes", newest.bytes());
        }
        warning(newest.state(), health);
        return health.build();
    }

    private static void warning(BackupAge.State state, Health.Builder health) {
        switch (state) {
            case OLD ->
                health.withDetail("warning", "the newest backup is older than " + BackupAge.OLD.toHours() + " hours");
            case NONE_YET -> health.withDetail("warning", "there is no backup yet");
            case UNKNOWN -> health.withDetail("warning", "the directory of backups cannot be read");
            case RECENT, NOT_HERE -> {}
        }
    }
}
