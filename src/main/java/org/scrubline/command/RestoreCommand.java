package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.function.Consumer;
import org.scrubline.backup.Restore;
import org.scrubline.backup.file.Manifest;
import org.scrubline.platform.database.CommandDatabase;
import org.springframework.core.env.Environment;

/** {@code restore}: a backup into an empty installation. */
final class RestoreCommand extends InstallationCommand {

    private static final String USAGE = """
            restore --from FILE [--passphrase-file FILE] [--scrubline.data-directory=DIR] [--spring.…=…]
            Loads a backup into an empty installation, or makes one. Verifies the whole file before it writes anything.
              --from FILE              the backup
              --passphrase-file FILE   holds, in its first line, the passphrase the backup was sealed with
            Settings are those of the server, on the line or in the environment. The server must not be running.
            """;

    RestoreCommand() {
        super("restore", USAGE);
    }

    @Override
    String work(List<String> args, Consumer<String> progress) throws IOException, SQLException {
        InstallationOptions options = InstallationOptions.parse(args, "--from");
        Environment settings = InstallationSettings.of(options.settings());
        Restore restore = Restore.of(options.file(), options.passphrase());
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
