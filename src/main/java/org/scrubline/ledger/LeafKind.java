package org.scrubline.ledger;

import java.util.List;

/**
 * What a leaf is about, and the rows it fixes: in each table, those whose key column holds the record's id.
 *
 * <p>Every table the server may only add to and read belongs to exactly one kind; a row no leaf fixes is found by the
 * verifier as readily as one that changed.
 */
public enum LeafKind {
    /** A signed version of a score sheet. */
    SIGNATURE(
            new Rows("signed_sheet", "id"),
            new Rows("signed_step", "signed_sheet_id"),
            new Rows("signed_event", "signed_sheet_id")),
    /** The trainee's remark under a signed record. */
    REMARK(new Rows("sheet_remark", "id")),
    /** A sheet handed to another supervisor. */
    HANDED_ON(new Rows("sheet_assignment", "id")),
    /** A published version of a rubric. */
    RUBRIC(new Rows("rubric_version", "id"), new Rows("rubric_step", "rubric_version_id")),
    /** Cases before joining, as declared. */
    PRIOR_EXPERIENCE(new Rows("prior_experience", "id")),
    /** A population fit the curves rest on. */
    POPULATION_FIT(new Rows("population_fit", "id")),
    /** A key that signs checkpoints, by its public half. */
    LEDGER_KEY(new Rows("ledger_key", "id")),
    /** A signed checkpoint of the leaves before its own. */
    CHECKPOINT(new Rows("ledger_checkpoint", "id"));

    /**
     * Rows of one table that belong to a record.
     *
     * @param table its name; it has a column {@code tenant_id}
     * @param key the column that holds the record's id
     */
    public record Rows(String table, String key) {}

    // A list of List.of cannot change.
    @SuppressWarnings("ImmutableEnumChecker")
    private final List<Rows> rows;

    LeafKind(Rows... rows) {
        this.rows = List.of(rows);
    }

    /** The tables whose rows a leaf of this kind fixes, in the order they are read. */
    public List<Rows> rows() {
        return rows;
    }
}
