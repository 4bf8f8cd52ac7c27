package org.scrubline.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.ServiceLoader;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.check.CheckResult;
import org.scrubline.ledger.check.CheckWords;
import org.scrubline.ledger.check.DatabaseCheck;
import org.scrubline.ledger.check.EvidenceFile;
import org.scrubline.ledger.check.Known;
import org.scrubline.ledger.check.ReceiptFile;
import org.scrubline.ledger.note.VerifierKey;
import org.scrubline.platform.database.DatabaseUnusable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * {@code verify}: checks the evidence in a database, also while the server runs, in an evidence file or in a receipt.
 * Exit codes: 0 sound, 1 not sound, 2 cannot run.
 */
@Command(
        name = "verify",
        separator = " ",
        sortOptions = false,
        description = {
            "Checks the evidence: in the database, also while the server runs, in an evidence file or in a receipt.",
            "Exit codes: 0 sound, 1 not sound, 2 cannot run."
        },
        footer = ServerCommand.SETTINGS)
final class VerifyCommand extends ServerCommand {

    @Option(names = "--file", paramLabel = "FILE", description = "check an evidence file; needs no database")
    private Optional<Path> file = Optional.empty();

    @Option(
            names = "--receipt",
            paramLabel = "FILE",
            description = "check the receipt of one record; needs no database")
    private Optional<Path> receipt = Optional.empty();

    @Option(names = "--tenant", paramLabel = "ID", description = "one organisation of the database, not all")
    private Optional<UUID> tenant = Optional.empty();

    @Option(
            names = "--checkpoint",
            paramLabel = "FILE",
            description = "a checkpoint kept from earlier: the evidence must continue it (may be repeated)")
    private List<Path> checkpoints = List.of();

    @Option(
            names = "--key",
            paramLabel = "FILE",
            description = "verifier keys kept from earlier, one a line: the newest checkpoint must be theirs"
                    + " (may be repeated)")
    private List<Path> keys = List.of();

    private final Iterable<RecordCheck> checks = ServiceLoader.load(RecordCheck.class);
    private final CheckWords words = new CheckWords(VerifyCommand::find);

    VerifyCommand(Terminal terminal) {
        super(terminal);
    }

    @Override
    public Integer call() {
        try {
            ServerSettings settings = settings();
            Known known = Known.read(texts(keys), texts(checkpoints));
            List<CheckResult> results = check(known, settings);
            boolean homeless = homeless(known, results);
            results.forEach(this::print);
            return homeless || !results.stream().allMatch(CheckResult::sound) ? Commands.PROBLEM : Commands.FINE;
        } catch (IllegalArgumentException
                | DatabaseUnusable
                | ReceiptFile.NotAReceipt
                | IOException
                | SQLException unusable) {
            terminal.err().println(unusable.getMessage());
            return Commands.WRONG_USE;
        }
    }

    private List<CheckResult> check(Known known, ServerSettings settings)
            throws IOException, SQLException, ReceiptFile.NotAReceipt {
        if (receipt.isPresent() && file.isPresent()) {
            throw new WrongUse("Name --file or --receipt, not both.");
        }
        if (receipt.isPresent()) {
            return List.of(ReceiptFile.check(text(receipt.get()), known, checks));
        }
        return file.isPresent() ? List.of(evidence(file.get(), known)) : database(known, settings);
    }

    private CheckResult evidence(Path evidence, Known known) throws IOException {
        if (!Files.isReadable(evidence)) {
            throw new IllegalArgumentException("The file " + evidence + " cannot be read.");
        }
        try (BufferedReader reader = Files.newBufferedReader(evidence)) {
            return EvidenceFile.check(reader, known, checks);
        }
    }

    private List<CheckResult> database(Known known, ServerSettings settings) throws IOException, SQLException {
        List<CheckResult> results = new ArrayList<>();
        try (Installation installation = Installation.open(settings);
                Connection connection = installation.connect()) {
            for (UUID one : tenant.isPresent() ? List.of(tenant.get()) : DatabaseCheck.organisations(connection)) {
                DatabaseCheck check = new DatabaseCheck(connection, one);
                Known about = known(check, known, one, installation.keyFile());
                results.add(check.run(about, checks, new Progress(terminal.err())));
            }
        }
        return results;
    }

    private static List<String> texts(List<Path> files) {
        return files.stream().map(VerifyCommand::text).toList();
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new IllegalArgumentException("The file " + file + " cannot be read.", unreadable);
        }
    }

    /** Without a key from the line, the key file of this machine serves: it lies outside the database. */
    private static Known known(DatabaseCheck check, Known known, UUID tenant, Optional<Path> keyFile)
            throws SQLException, IOException {
        Known about = known.about(tenant);
        if (!about.keys().isEmpty() || keyFile.isEmpty()) {
            return about;
        }
        List<VerifierKey> keys = check.keysOf(keyFile.get());
        return new Known(keys, about.checkpoints());
    }

    /** Says so when a checkpoint was given whose organisation is not here at all. */
    private boolean homeless(Known known, List<CheckResult> results) {
        List<String> lost = known.checkpoints().stream()
                .map(held -> held.checkpoint().origin())
                .filter(origin -> results.stream().noneMatch(result -> origin.endsWith("/" + result.tenant())))
                .toList();
        lost.forEach(origin -> terminal.out().println(say("ledger.problem.HELD_ORIGIN", "", origin)));
        return !lost.isEmpty();
    }

    private void print(CheckResult result) {
        PrintStream out = terminal.out();
        out.println(say("ledger.organisation", result.tenant()));
        words.facts(result).forEach(fact -> out.println("  " + fact));
        words.findings(result).forEach(finding -> out.println("  - " + finding));
        out.println(words.verdict(result));
    }

    private static String say(String key, Object... arguments) {
        return Objects.requireNonNull(find(key, arguments), key);
    }

    private static @Nullable String find(String key, Object... arguments) {
        ResourceBundle bundle = ResourceBundle.getBundle("messages/ledger", Locale.ENGLISH);
        return bundle.containsKey(key)
                ? new MessageFormat(bundle.getString(key), Locale.ENGLISH).format(arguments)
                : null;
    }
}
