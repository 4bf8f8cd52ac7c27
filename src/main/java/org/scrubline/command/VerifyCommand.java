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
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.ServiceLoader;
import java.util.Set;
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

/** {@code verify}: checks the evidence in a database, in an evidence file or in a receipt. */
final class VerifyCommand {

    private static final int SOUND = 0;
    private static final int NOT_SOUND = 1;
    private static final int CANNOT_RUN = 2;

    private static final String USAGE = """
            verify [--tenant ID] [--scrubline.data-directory=DIR | --spring.datasource.url=URL …]
                checks the evidence in the database, also while the server runs
            verify --export FILE
                checks an evidence file; needs no database
            verify --receipt FILE
                checks the receipt of one record; needs no database
            Each takes, as often as you like:
              --checkpoint FILE   a checkpoint kept from earlier: the evidence must continue it
              --key FILE          verifier keys kept from earlier, one a line: the newest checkpoint must be theirs
            Exit codes: 0 sound, 1 not sound, 2 cannot run.
            """;

    private final Map<String, String> environment;
    private final Iterable<RecordCheck> checks = ServiceLoader.load(RecordCheck.class);
    private final CheckWords words = new CheckWords(VerifyCommand::find);

    VerifyCommand(Map<String, String> environment) {
        this.environment = environment;
    }

    int run(List<String> args, PrintStream out, PrintStream err) {
        if (args.contains("--help")) {
            out.print(USAGE);
            return SOUND;
        }
        try {
            Options options =
                    new Options(args, Set.of("export", "receipt", "checkpoint", "key", "tenant"), environment);
            Known known = Known.read(options.texts("key"), options.texts("checkpoint"));
            List<CheckResult> results = check(options, known, err);
            boolean homeless = homeless(known, results, out);
            results.forEach(result -> print(result, out));
            return homeless || !results.stream().allMatch(CheckResult::sound) ? NOT_SOUND : SOUND;
        } catch (IllegalArgumentException
                | DatabaseUnusable
                | ReceiptFile.NotAReceipt
                | IOException
                | SQLException unusable) {
            err.println(unusable.getMessage());
            return CANNOT_RUN;
        }
    }

    private List<CheckResult> check(Options options, Known known, PrintStream err)
            throws IOException, SQLException, ReceiptFile.NotAReceipt {
        Optional<String> receipt = options.one("receipt");
        if (receipt.isPresent()) {
            return List.of(ReceiptFile.check(Options.text(receipt.get()), known, checks));
        }
        Optional<String> export = options.one("export");
        if (export.isPresent()) {
            return List.of(export(Options.path(export.get()), known));
        }
        return database(options, known, err);
    }

    private CheckResult export(Path file, Known known) throws IOException {
        if (!Files.isReadable(file)) {
            throw new IllegalArgumentException("The file " + file + " cannot be read.");
        }
        try (BufferedReader reader = Files.newBufferedReader(file)) {
            return EvidenceFile.check(reader, known, checks);
        }
    }

    private List<CheckResult> database(Options options, Known known, PrintStream err) throws IOException, SQLException {
        List<CheckResult> results = new ArrayList<>();
        try (Installation installation = Installation.open(options);
                Connection connection = installation.connect()) {
            for (UUID tenant : tenants(options, connection)) {
                DatabaseCheck check = new DatabaseCheck(connection, tenant);
                Known about = known(check, known, tenant, installation.keyFile());
                results.add(check.run(about, checks, new Progress(err)));
            }
        }
        return results;
    }

    private static List<UUID> tenants(Options options, Connection connection) throws SQLException {
        Optional<String> one = options.one("tenant");
        return one.isPresent() ? List.of(UUID.fromString(one.get())) : DatabaseCheck.organisations(connection);
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
    private static boolean homeless(Known known, List<CheckResult> results, PrintStream out) {
        List<String> lost = known.checkpoints().stream()
                .map(held -> held.checkpoint().origin())
                .filter(origin -> results.stream().noneMatch(result -> origin.endsWith("/" + result.tenant())))
                .toList();
        lost.forEach(origin -> out.println(say("ledger.problem.HELD_ORIGIN", "", origin)));
        return !lost.isEmpty();
    }

    private void print(CheckResult result, PrintStream out) {
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
