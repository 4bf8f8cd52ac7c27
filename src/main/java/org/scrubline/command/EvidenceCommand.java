package org.scrubline.command;

import java.io.IOException;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.scrubline.ledger.check.DatabaseCheck;
import org.scrubline.ledger.check.EvidenceFile;
import org.scrubline.platform.database.DatabaseUnusable;

/** {@code evidence [--tenant ID] --out FILE}: all evidence of one organisation as a file (docs/evidence-format.md). */
final class EvidenceCommand {

    private static final int FINE = 0;
    private static final int CANNOT_RUN = 2;

    private static final String USAGE = """
            evidence --out FILE [--tenant ID] [--scrubline.data-directory=DIR | --spring.datasource.url=URL …]
                Writes all evidence of an organisation; verify --export FILE checks it without a database. --tenant is
                needed where there are several organisations.
            """;

    private final Map<String, String> environment;

    EvidenceCommand(Map<String, String> environment) {
        this.environment = environment;
    }

    int run(List<String> args, PrintStream out, PrintStream err) {
        if (args.contains("--help")) {
            out.print(USAGE);
            return FINE;
        }
        try {
            Options options = new Options(args, Set.of("tenant", "out"), environment);
            Path file = Options.path(options.one("out")
                    .orElseThrow(() -> new IllegalArgumentException("Name the file to write with --out FILE.")));
            write(options, file, err);
            out.println("Written to " + file + ". Check it with: verify --export " + file);
            return FINE;
        } catch (IllegalArgumentException | DatabaseUnusable | IOException | SQLException unusable) {
            err.println(unusable.getMessage());
            return CANNOT_RUN;
        }
    }

    private static void write(Options options, Path file, PrintStream err) throws IOException, SQLException {
        try (Installation installation = Installation.open(options);
                Connection connection = installation.connect();
                Writer writer = Files.newBufferedWriter(file)) {
            EvidenceFile.write(connection, tenant(connection, options), writer, new Progress(err));
        }
    }

    private static UUID tenant(Connection connection, Options options) throws SQLException {
        List<UUID> organisations = DatabaseCheck.organisations(connection);
        if (options.one("tenant").isPresent()) {
            UUID wanted = UUID.fromString(options.one("tenant").get());
            if (!organisations.contains(wanted)) {
                throw new IllegalArgumentException("There is no organisation " + wanted + " here.");
            }
            return wanted;
        }
        if (organisations.size() != 1) {
            throw new IllegalArgumentException("Choose one organisation with --tenant ID: " + organisations);
        }
        return organisations.get(0);
    }
}
