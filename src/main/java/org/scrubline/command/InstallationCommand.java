package org.scrubline.command;

import java.io.IOException;
import java.io.PrintStream;
import java.sql.SQLException;
import java.util.List;
import java.util.function.Consumer;
import org.scrubline.backup.file.BackupProblem;
import org.scrubline.platform.database.DatabaseUnusable;

/** What {@code backup} and {@code restore} share: help, exit codes, one sentence when something stands in the way. */
abstract class InstallationCommand {

    private static final int FINE = 0;
    private static final int PROBLEM = 1;
    private static final int WRONG_USE = 2;

    private final String name;
    private final String usage;

    InstallationCommand(String name, String usage) {
        this.name = name;
        this.usage = usage;
    }

    /** Does the work; what it returns is printed as the result. */
    abstract String work(List<String> args, Consumer<String> progress) throws IOException, SQLException;

    /**
     * Runs the command.
     *
     * @param args options after the command's name; see {@code --help}
     * @param out the result
     * @param err progress and problems
     * @return 0 fine, 1 a problem, 2 wrong use
     */
    final int run(List<String> args, PrintStream out, PrintStream err) {
        if (args.contains("--help")) {
            out.print(usage);
            return FINE;
        }
        try {
            out.println(work(args, new LastTable(name, err)));
            return FINE;
        } catch (InstallationOptions.WrongUse e) {
            err.println(name + ": " + e.getMessage());
            err.print(usage);
            return WRONG_USE;
        } catch (BackupProblem | DatabaseUnusable e) {
            err.println(name + ": " + e.getMessage());
            return PROBLEM;
        } catch (IOException | SQLException | IllegalStateException e) {
            err.println(name + ": The database cannot be started or reached: " + e.getMessage());
            return PROBLEM;
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
