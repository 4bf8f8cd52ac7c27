package org.scrubline.backup;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.scrubline.backup.file.BackupProblem;
import org.scrubline.backup.file.BackupWriter;
import org.scrubline.backup.file.Manifest;
import org.scrubline.backup.file.Passphrase;
import org.scrubline.platform.database.DatabaseLogin;
import org.springframework.dao.DataAccessException;

/**
 * Writes everything an installation holds to one file, as of one moment, while it goes on working. Reads as the role
 * the server works as: each organisation's rows with that organisation set on the transaction, as a request would.
 */
public final class Backup {

    private final DatabaseLogin login;
    private final Clock clock;

    /**
     * @param login the role the server works as
     * @param clock dates the file
     */
    public Backup(DatabaseLogin login, Clock clock) {
        this.login = login;
        this.clock = clock;
    }

    /**
     * Writes the file. When this fails, no file is left.
     *
     * @param target a name that is free
     * @param passphrase seals the file, if given
     * @param progress told each table's name before it is read
     * @return what the file holds
     * @throws BackupProblem with a sentence for the operator
     */
    public Manifest write(Path target, Optional<Passphrase> passphrase, Consumer<String> progress) {
        try (Connection connection = login.open();
                BackupWriter writer = BackupWriter.create(target, passphrase)) {
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
            connection.setReadOnly(true);
            connection.setAutoCommit(false);
            Manifest manifest = new Snapshot(connection, writer).write(progress);
            writer.finish(manifest);
            return manifest;
        } catch (SQLException | DataAccessException e) {
            throw new BackupProblem("The database did not hand out its rows: " + Reason.of(e), e);
        } catch (IOException e) {
            throw new BackupProblem("The backup could not be written: " + Reason.of(e), e);
        }
    }

    /** One transaction's view of the database. */
    private final class Snapshot {

        private final BackupWriter writer;
        private final CatalogueQueries catalogue;
        private final RowStore rows;
        private final int postgresql;

        Snapshot(Connection connection, BackupWriter writer) throws SQLException {
            this.writer = writer;
            this.rows = new RowStore(connection);
            this.catalogue = new CatalogueQueries(connection);
            this.postgresql = connection.getMetaData().getDatabaseMajorVersion();
        }

        Manifest write(Consumer<String> progress) throws IOException, SQLException {
            List<StoredTable> tables = catalogue.tables();
            String schema = catalogue
                    .schemaVersion()
                    .orElseThrow(() -> new BackupProblem("The database does not say which version its tables have."
                            + " Start the server once, so that it brings them up to date."));
            refuseUnreadable(tables);
            List<UUID> organisations = catalogue.organisations();
            List<Manifest.Table> written = new ArrayList<>();
            for (StoredTable table : tables) {
                if (table.travels()) {
                    progress.accept(table.name());
                    written.add(new Manifest.Table(table.name(), table.columns(), parts(table, organisations)));
                }
            }
            return new Manifest(
                    Manifest.FORMAT,
                    ProgramVersion.current(),
                    schema,
                    postgresql,
                    clock.instant(),
                    written,
                    LeftOut.TABLES,
                    checkpoints(organisations));
        }

        private List<Manifest.Part> parts(StoredTable table, List<UUID> organisations)
                throws IOException, SQLException {
            if (!table.walled()) {
                return List.of(part(table, null));
            }
            List<Manifest.Part> parts = new ArrayList<>();
            for (UUID tenant : organisations) {
                rows.enter(tenant);
                parts.add(part(table, tenant));
            }
            return parts;
        }

        private Manifest.Part part(StoredTable table, @Nullable UUID tenant) throws IOException, SQLException {
            String entry = "tables/" + table.name() + (tenant == null ? "" : "/" + tenant) + ".copy";
            return writer.add(entry, tenant, out -> rows.copyOut(table, tenant, out));
        }

        private List<Manifest.Checkpoint> checkpoints(List<UUID> organisations) throws SQLException {
            List<Manifest.Checkpoint> checkpoints = new ArrayList<>();
            if (catalogue.hasCheckpoints()) {
                for (UUID tenant : organisations) {
                    rows.enter(tenant);
                    catalogue.newestCheckpoint(tenant).ifPresent(checkpoints::add);
                }
            }
            return checkpoints;
        }
    }

    /** A table that is left out because nobody granted it would be missed only at the restore. */
    private static void refuseUnreadable(List<StoredTable> tables) {
        List<String> unreadable = tables.stream()
                .filter(table -> table.travels() && !table.readable())
                .map(StoredTable::name)
                .toList();
        if (!unreadable.isEmpty()) {
            throw new BackupProblem(
                    "The database role may not read " + String.join(", ", unreadable) + "; no backup was written.");
        }
    }
}
