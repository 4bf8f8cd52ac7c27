package org.scrubline.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import java.util.function.Consumer;
import org.scrubline.backup.file.BackupProblem;
import org.scrubline.backup.file.Passphrase;
import org.scrubline.platform.database.DatabaseUnusable;
import org.springframework.core.env.Environment;
import picocli.CommandLine.Option;

/** What {@code backup} and {@code restore} share: options, exit codes, one sentence when something stands in the way. */
abstract class InstallationCommand extends ServerCommand {

    @Option(
            names = "--passphrase-file",
            paramLabel = "FILE",
            description = "seals or opens the backup with the first line of this file (12 characters or more)")
    private Optional<Path> passphraseFile = Optional.empty();

    private final String name;

    InstallationCommand(String name, Terminal terminal) {
        super(terminal);
        this.name = name;
    }

    /** Does the work; what it returns is printed as the result. */
    abstract String work(Consumer<String> progress) throws IOException, SQLException;

    final Optional<Passphrase> passphrase() {
        return passphraseFile.map(Passphrase::of);
    }

    final Environment environment() {
        return InstallationSettings.of(settings().lines());
    }

    @Override
    public final Integer call() {
        PrintStream err = terminal.err();
        try {
            terminal.out().println(work(new LastTable(name, err)));
            return Commands.FINE;
        } catch (BackupProblem | DatabaseUnusable e) {
            err.println(name + ": " + e.getMessage());
            return Commands.PROBLEM;
        } catch (IOException | SQLException | IllegalStateException e) {
            err.println(name + ": The database cannot be started or reached: " + e.getMessage());
            return Commands.PROBLEM;
        }
    }

    /** One line a table, however many parts it has. */
    private static final class LastTable implements Consumer<String> {

        private final String name;
        private final PrintStream err;
        private String last = "";

        LastTable(String name, PrintStream err) {
            this.name = name;
            this.err = err;
        }

        @Override
        public void accept(String table) {
            if (!table.equals(last)) {
                err.println(name + ": " + table);
                last = table;
            }
        }
    }
}
