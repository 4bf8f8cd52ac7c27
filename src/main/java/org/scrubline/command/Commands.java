package org.scrubline.command;

import java.io.PrintStream;
import java.time.Clock;
import java.util.List;
import java.util.OptionalInt;

/** Finds the command a line begins with. Without one, or with {@code serve}, the server starts. */
public final class Commands {

    private static final int DONE = 0;
    private static final int WRONG_USE = 2;

    private static final String USAGE = """
            scrubline [serve] [--spring.profiles.active=demo] [--server.port=8080] [--scrubline.data-directory=DIR]
                the web server (default)
            scrubline curves --scores FILE --config FILE [--gradient] [--out FILE] [--svg DIR]
                competency curves from a score file
            scrubline statistic METHOD FILE.json [--out FILE]
                one statistic from a JSON file
            scrubline verify [--export FILE | --receipt FILE] [--checkpoint FILE] [--key FILE]
                checks the evidence: in the database, in an evidence file or in a receipt
            scrubline evidence --out FILE [--tenant ID]
                writes all evidence of an organisation to a file
            scrubline backup --out FILE [--passphrase-file FILE] [--scrubline.data-directory=DIR]
                the whole installation in one file, while the server may go on working
            scrubline restore --from FILE [--passphrase-file FILE] [--scrubline.data-directory=DIR]
                such a file into an empty installation
            COMMAND --help says more. Exit codes: 0 fine, 1 found a problem, 2 wrong use.
            """;

    private Commands() {}

    /**
     * Runs the command of the line, if it is one that needs no server.
     *
     * @param args the whole line
     * @return the exit code; empty when the server is to be started
     */
    public static OptionalInt run(List<String> args, PrintStream out, PrintStream err) {
        String first = args.isEmpty() ? "serve" : args.get(0);
        List<String> rest = args.isEmpty() ? args : args.subList(1, args.size());
        return switch (first) {
            case "curves" -> OptionalInt.of(new CurvesCommand().run(rest, out, err));
            case "statistic" -> OptionalInt.of(new StatisticCommand().run(rest, out, err));
            case "verify" -> OptionalInt.of(new VerifyCommand(System.getenv()).run(rest, out, err));
            case "evidence" -> OptionalInt.of(new EvidenceCommand(System.getenv()).run(rest, out, err));
            case "backup" -> OptionalInt.of(new BackupCommand(Clock.systemUTC()).run(rest, out, err));
            case "restore" -> OptionalInt.of(new RestoreCommand().run(rest, out, err));
            case "--help", "help" -> {
                out.print(USAGE);
                yield OptionalInt.of(DONE);
            }
            default -> first.equals("serve") || first.startsWith("--") ? OptionalInt.empty() : unknown(first, err);
        };
    }

    private static OptionalInt unknown(String command, PrintStream err) {
        err.println("scrubline: there is no command " + command + ".");
        err.print(USAGE);
        return OptionalInt.of(WRONG_USE);
    }
}
