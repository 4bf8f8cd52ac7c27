package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Consumer;
import org.scrubline.backup.Backup;
import org.scrubline.backup.file.Manifest;
import org.scrubline.backup.file.Passphrase;
import org.scrubline.platform.database.CommandDatabase;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code backup}: the whole installation in one file. */
@Command(
        name = "backup",
        separator = " ",
        sortOptions = false,
        description = "Writes everything the installation holds, as of one moment, to one file. The server may go on"
                + " working.",
        footer = ServerCommand.SETTINGS)
final class BackupCommand extends InstallationCommand {

    @SuppressWarnings("NullAway.Init") // required, so the parser fills it
    @Option(names = "--out", required = true, paramLabel = "FILE", description = "the backup; must not exist yet")
    private Path out;

    BackupCommand(Terminal terminal) {
        super("backup", terminal);
    }

    @Override
    String work(Consumer<String> progress) throws IOException, SQLException {
        Optional<Passphrase> passphrase = passphrase();
        try (CommandDatabase database = CommandDatabase.beside(environment())) {
            Manifest manifest = new Backup(database.runtime(), Clock.systemUTC()).write(out, passphrase, progress);
            return "Backed up " + manifest.rows() + " rows of "
                    + manifest.tables().size() + " tables (version " + manifest.schema() + ") to " + out
                    + (passphrase.isPresent() ? ", sealed." : ".");
        }
    }
}
