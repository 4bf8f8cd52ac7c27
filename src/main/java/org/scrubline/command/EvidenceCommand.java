package org.scrubline.command;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.check.DatabaseCheck;
import org.scrubline.ledger.check.EvidenceFile;
import org.scrubline.platform.database.DatabaseUnusable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code evidence [--tenant ID] --out FILE}: all evidence of one organisation as a file (docs/evidence-format.md). */
@Command(
        name = "evidence",
        separator = " ",
        sortOptions = false,
        description = "Writes all evidence of an organisation; verify --file FILE checks it without a database.",
        footer = ServerCommand.SETTINGS)
final class EvidenceCommand extends ServerCommand {

    @SuppressWarnings("NullAway.Init") // required, so the parser fills it
    @Option(names = "--out", required = true, paramLabel = "FILE", description = "the file to write")
    private Path out;

    @Option(names = "--tenant", paramLabel = "ID", description = "which organisation, where there are several")
    private Optional<UUID> tenant = Optional.empty();

    EvidenceCommand(Terminal terminal) {
        super(terminal);
    }

    @Override
    public Integer call() {
        try {
            write();
            terminal.out().println("Written to " + out + ". Check it with: verify --file " + out);
            return Commands.FINE;
        } catch (IllegalArgumentException | DatabaseUnusable | IOException | SQLException unusable) {
            terminal.err().println(unusable.getMessage());
            return Commands.WRONG_USE;
        }
    }

    private void write() throws IOException, SQLException {
        try (Installation installation = Installation.open(settings());
                Connection connection = installation.connect();
                Writer writer = Files.newBufferedWriter(out)) {
            EvidenceFile.write(connection, organisation(connection), writer, new Progress(terminal.err()));
        }
    }

    private UUID organisation(Connection connection) throws SQLException {
        List<UUID> organisations = DatabaseCheck.organisations(connection);
        if (tenant.isPresent() && !organisations.contains(tenant.get())) {
            throw new IllegalArgumentException("There is no organisation " + tenant.get() + " here.");
        }
        if (tenant.isEmpty() && organisations.size() != 1) {
            throw new IllegalArgumentException("Choose one organisation with --tenant ID: " + organisations);
        }
        return tenant.orElseGet(() -> organisations.get(0));
    }
}
