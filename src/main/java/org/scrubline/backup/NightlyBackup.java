package org.scrubline.backup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Instant;
import org.scrubline.backup.file.Manifest;
import org.scrubline.platform.database.DatabaseLogin;
import org.scrubline.platform.jobs.JobSchedule;
import org.scrubline.platform.jobs.RecurringJob;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** Every night a backup into the directory of backups; the oldest make room only after a new one is whole. */
class NightlyBackup implements RecurringJob {

    private static final Logger log = LoggerFactory.getLogger(NightlyBackup.class);

    private final BackupSettings settings;
    private final JdbcConnectionDetails connection;
    private final Clock clock;

    NightlyBackup(BackupSettings settings, JdbcConnectionDetails connection, Clock clock) {
        this.settings = settings;
        this.connection = connection;
        this.clock = clock;
    }

    @Override
    public String name() {
        return "nightly-backup";
    }

    @Override
    public JobSchedule schedule() {
        return JobSchedule.daily(settings.time());
    }

    @Override
    public Reach reach() {
        return Reach.INSTALLATION;
    }

    @Override
    public void run() {
        BackupFolder folder = new BackupFolder(settings.directory());
        Instant begun = clock.instant();
        try {
            Manifest manifest = new Backup(DatabaseLogin.of(connection), clock)
                    .write(folder.file(begun), settings.passphrase(), table -> log.debug("Backing up {}", table));
            folder.keep(settings.keep());
            log.info(
                    "Nightly backup written: {} rows of {} tables",
                    manifest.rows(),
                    manifest.tables().size());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
