package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.function.Consumer;
import org.scrubline.backup.Restore;
import org.scrubline.backup.file.Manifest;
import org.scrubline.platform.database.CommandDatabase;
import org.springframework.core.env.Environment;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code restore}: a backup into an empty installation. */
@Command(
        name = "restore",
        separator = " ",
        sortOptions = false,
        description =
                "Loads a backup into an empty installation, or makes one. Verifies the whole file before it writes"
                        + " anything. The server must not be running.",
        footer = ServerCommand.SETTINGS)
final class RestoreCommand extends InstallationCommand {

    @SuppressWarnings("NullAway.Init") // required, so the parser fills it
    @Option(names = "--from", required = true, paramLabel = "FILE", description = "the backup")
    private Path from;

    RestoreCommand(Terminal terminal) {
        super("restore", terminal);
    }

    @Override
    String work(Consumer<String> progress) throws IOException, SQLException {
        Environment settings = environment();
        Restore restore = Restore.of(from, passphrase());
        try (CommandDatabase database = CommandDatabase.alone(settings)) {
            restore.into(database, settings, progress);
        }
        Manifest manifest = restore.manifest();
        return "Restored " + manifest.rows() + " rows of " + manifest.tables().size() + " tables, as of "
                + manifest.created() + ". Everyone logs in again." + keySentence(settings);
    }

    /** The key that signs ledger checkpoints lives outside the database, so a backup cannot hold it. */
    private static String keySentence(Environment settings) {
        Path key = Path.of(settings.getProperty(
                "scrubline.ledger.key-file", settings.getProperty("scrubline.data-directory") + "/ledger.key"));
        return Files.exists(key)
                ? ""
                : System.lineSeparator() + "The key that signs the ledger's checkpoints is not part of a backup, and"
                        + " there is none at " + key + ": copy the old installation's key file there before you start"
                        + " the server.";
    }
}
