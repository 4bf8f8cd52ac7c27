package org.scrubline.backup.file;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a backup holds; the last entry of the file.
 *
 * @param format version of the file format, {@link #FORMAT} when written by this program
 * @param scrubline version of the program that wrote it
 * @param schema version of the database schema, as its newest migration is numbered
 * @param postgresql major version of the database server
 * @param created when the backup began; every row is as of this moment
 * @param tables the tables and their parts
 * @param leftOut tables that do not travel, each with the reason
 * @param checkpoints the newest checkpoint of each organisation's evidence ledger, if there is a ledger
 */
public record Manifest(
        int format,
        String scrubline,
        String schema,
        int postgresql,
        Instant created,
        List<Table> tables,
        Map<String, String> leftOut,
        List<Checkpoint> checkpoints) {

    /** The one format this program writes and reads. */
    public static final int FORMAT = 1;

    public Manifest {
        tables = List.copyOf(tables);
        leftOut = Map.copyOf(leftOut);
        checkpoints = List.copyOf(checkpoints);
    }

    /**
     * One table.
     *
     * @param columns in the order of the values in each line
     * @param parts one for the whole table, or one an organisation
     */
    public record Table(String name, List<String> columns, List<Part> parts) {
        public Table {
            columns = List.copyOf(columns);
            parts = List.copyOf(parts);
        }
    }

    /**
     * The rows of one entry of the file.
     *
     * @param tenant the organisation, or null for a table that belongs to none
     * @param entry name of the entry
     * @param rows lines
     * @param bytes size before compression
     * @param sha256 of those bytes, in hex
     */
    public record Part(@Nullable UUID tenant, String entry, long rows, long bytes, String sha256) {}

    /** A ledger's checkpoint as it was signed. */
    public record Checkpoint(UUID tenant, String text) {}

    /** Rows of all parts. */
    public long rows() {
        return parts().stream().mapToLong(Part::rows).sum();
    }

    /** All parts in the order of the file. */
    public List<Part> parts() {
        return tables.stream().flatMap(table -> table.parts().stream()).toList();
    }
}
