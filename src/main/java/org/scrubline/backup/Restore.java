package org.scrubline.backup;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationVersion;
import org.scrubline.backup.file.BackupProblem;
import org.scrubline.backup.file.BackupReader;
import org.scrubline.backup.file.Manifest;
import org.scrubline.backup.file.Passphrase;
import org.scrubline.platform.database.CommandDatabase;
import org.springframework.core.env.Environment;
import org.springframework.dao.DataAccessException;

/** Loads a backup into an empty installation. Nothing is written before the whole file has been verified. */
public final class Restore {

    private final BackupReader reader;
    private final Manifest manifest;

    private record Target(Manifest.Table table, Manifest.Part part) {}

    private Restore(BackupReader reader, Manifest manifest) {
        this.reader = reader;
        this.manifest = manifest;
    }

    /**
     * Reads and verifies the whole file.
     *
     * @throws BackupProblem with a sentence for the operator
     */
    public static Restore of(Path file, Optional<Passphrase> passphrase) {
        BackupReader reader = new BackupReader(file, passphrase);
        try {
            return new Restore(reader, reader.verify());
        } catch (IOException e) {
            throw new BackupProblem("The backup " + file + " cannot be read: " + e.getMessage(), e);
        }
    }

    /** What the verified file says it holds. */
    public Manifest manifest() {
        return manifest;
    }

    /**
     * Makes the file's version of the tables, loads every row in one transaction, then brings the tables up to date.
     * When that fails, the installation is as empty as before.
     *
     * @param database where no server is running
     * @param settings as the server would read them
     * @param progress told each table's name before it is loaded
     * @throws BackupProblem with a sentence for the operator
     */
    public void into(CommandDatabase database, Environment settings, Consumer<String> progress) {
        Migrations migrations = new Migrations(database.owner(), settings);
        try {
            MigrationVersion version = knownVersion(migrations);
            requireEmpty(database);
            fill(migrations, version, database, progress);
        } catch (SQLException | DataAccessException | FlywayException | IOException e) {
            throw new BackupProblem("The restore did not succeed and nothing was stored: " + Reason.of(e), e);
        }
    }

    private MigrationVersion knownVersion(Migrations migrations) {
        MigrationVersion version = MigrationVersion.fromVersion(manifest.schema());
        if (version.compareTo(migrations.newest()) > 0) {
            throw new BackupProblem("The backup was written by a newer Scrubline (" + manifest.scrubline()
                    + ", tables of version " + version + "). Restore it with that one or a newer one.");
        }
        return version;
    }

    private static void requireEmpty(CommandDatabase database) throws SQLException {
        try (Connection owner = database.owner().open()) {
            owner.setAutoCommit(false);
            EmptinessQueries queries = new EmptinessQueries(owner);
            Optional<String> reason = queries.reasonAgainst(database.runtime().user());
            owner.rollback();
            reason.ifPresent(sentence -> {
                throw new BackupProblem(sentence);
            });
        }
    }

    private void fill(
            Migrations migrations, MigrationVersion version, CommandDatabase database, Consumer<String> progress)
            throws SQLException, IOException {
        try {
            migrations.begin(version);
            try (Connection owner = database.owner().open()) {
                owner.setAutoCommit(false);
                load(owner, progress);
                owner.commit();
            }
            migrations.toNewest();
        } catch (SQLException | IOException | RuntimeException e) {
            empty(migrations, e);
            throw e;
        }
    }

    /** Rows may have been stored before a later migration did not succeed. */
    private static void empty(Migrations migrations, Exception because) {
        try {
            migrations.begin(MigrationVersion.LATEST);
        } catch (FlywayException e) {
            because.addSuppressed(e);
        }
    }

    private void load(Connection owner, Consumer<String> progress) throws SQLException, IOException {
        requireSameTables(new CatalogueQueries(owner).tables());
        Map<String, Target> targets = targets();
        RowStore rows = new RowStore(owner);
        ConstraintStore constraints = new ConstraintStore(owner);
        constraints.lift();
        reader.rows((entry, lines) -> {
            Target target = targets.get(entry);
            if (target == null) {
                throw changed();
            }
            progress.accept(target.table().name());
            long loaded = rows.copyIn(target.table().name(), target.table().columns(), lines);
            if (loaded != target.part().rows()) {
                throw changed();
            }
        });
        constraints.putBack();
    }

    private static BackupProblem changed() {
        return new BackupProblem("The backup changed while it was read. Nothing was stored.");
    }

    private Map<String, Target> targets() {
        return manifest.tables().stream()
                .flatMap(table -> table.parts().stream().map(part -> new Target(table, part)))
                .collect(Collectors.toMap(target -> target.part().entry(), Function.identity()));
    }

    /** The file's tables and columns are those of its version, and none is missing. */
    private void requireSameTables(List<StoredTable> made) {
        Map<String, Set<String>> expected = made.stream()
                .filter(table -> table.travels() && !manifest.leftOut().containsKey(table.name()))
                .collect(Collectors.toMap(StoredTable::name, table -> Set.copyOf(table.columns())));
        Map<String, Set<String>> found = manifest.tables().stream()
                .collect(Collectors.toMap(Manifest.Table::name, table -> Set.copyOf(table.columns())));
        Set<String> names = new TreeSet<>(expected.keySet());
        names.addAll(found.keySet());
        names.removeIf(name -> Objects.equals(expected.get(name), found.get(name)));
        if (!names.isEmpty()) {
            throw new BackupProblem("The backup's tables are not those of version " + manifest.schema() + ": "
                    + String.join(", ", names) + ". Nothing was stored.");
        }
    }
}
