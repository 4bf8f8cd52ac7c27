package org.scrubline.command;

import java.io.IOException;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.function.Consumer;
import org.scrubline.backup.Backup;
import org.scrubline.backup.file.Manifest;
import org.scrubline.platform.database.CommandDatabase;

/** {@code backup}: the whole installation in one file. */
final class BackupCommand extends InstallationCommand {

    private static final String USAGE = """
            backup --out FILE [--passphrase-file FILE] [--scrubline.data-directory=DIR] [--spring.…=…]
            Writes everything the installation holds, as of one moment, to one file. The server may go on working.
              --out FILE               the backup; must not exist yet
              --passphrase-file FILE   seals the backup with the first line of this file (12 characters or more)
            Settings are those of the server, on the line or in the environment.
            """;

    private final Clock clock;

    BackupCommand(Clock clock) {
        super("backup", USAGE);
        this.clock = clock;
    }

    @Override
    String work(List<String> args, Consumer<String> progress) throws IOException, SQLException {
        InstallationOptions options = InstallationOptions.parse(args, "--out");
        try (CommandDatabase database = CommandDatabase.beside(InstallationSettings.of(options.settings()))) {
            Manifest manifest =
                    new Backup(database.runtime(), clock).write(options.file(), options.passphrase(), progress);
            return "Backed up " + manifest.rows() + " rows of "
                    + manifest.tables().size() + " tables (version " + manifest.schema() + ") to " + options.file()
                    + (options.passphraseFile().isPresent() ? ", sealed." : ".");
        }
    }
}
