package org.scrubline.backup;

import java.io.IOException;
import java.time.Clock;
import org.scrubline.platform.database.DatabaseKind;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class ObservedInstallation implements Installation {

    private static final Logger log = LoggerFactory.getLogger(ObservedInstallation.class);

    private final InstallationQueries queries;
    private final BackupSettings settings;
    private final ObjectProvider<NightlyBackup> nightly;
    private final Environment environment;
    private final Clock clock;

    ObservedInstallation(
            InstallationQueries queries,
            BackupSettings settings,
            ObjectProvider<NightlyBackup> nightly,
            Environment environment,
            Clock clock) {
        this.queries = queries;
        this.settings = settings;
        this.nightly = nightly;
        this.environment = environment;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Database database() {
        return new Database(DatabaseKind.of(environment), queries.serverVersion(), queries.schemaVersion());
    }

    @Override
    public BackupAge newestBackup() {
        try {
            return new BackupFolder(settings.directory())
                    .newest()
                    .map(newest -> BackupAge.of(newest, clock.instant()))
                    .orElseGet(() -> BackupAge.without(
                            nightly.getIfAvailable() == null ? BackupAge.State.NOT_HERE : BackupAge.State.NONE_YET));
        } catch (IOException unreadable) {
            log.warn("The directory of backups cannot be read", unreadable);
            return BackupAge.without(BackupAge.State.UNKNOWN);
        }
    }
}
