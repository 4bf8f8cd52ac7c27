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
            new Rows("signed_event", "signed_sheet_id"),
            new Rows("countersign_reason", "signed_sheet_id")),
    /** A passkey's signature under a record of another kind. */
    ASSERTION(new Rows("signature_assertion", "id")),
    /** A countersignature of a signed version, or why somebody could not give it. */
    COUNTERSIGNATURE(new Rows("countersignature", "id")),
    /** The trainee's signed answer to a version. */
    ACKNOWLEDGEMENT(new Rows("acknowledgement", "id")),
    /** A sheet a director let be signed late. */
    LATE_RELEASE(new Rows("late_release", "id")),
    /** What a person accepted before the first signature. */
    SIGNING_STATEMENT(new Rows("signing_statement", "id")),
    /** A changed programme setting. */
    SETTING(new Rows("programme_setting", "id")),
    /** The day a supervisor was introduced to scoring. */
    INTRODUCTION(new Rows("scorer_introduction", "id")),
    /** Cases planned for each month of a year of training. */
    EXPOSURE_PLAN(new Rows("exposure_plan", "id")),
    /** Induction, baseline, a goal or practice of a trainee. */
    TRAINING_ENTRY(new Rows("training_entry", "id")),
    /** What a supervisor said about a trainee's practice. */
    TRAINING_ANSWER(new Rows("training_answer", "id")),
    /** What a supervisor said about a reference case. */
    REFERENCE_SCORING(new Rows("reference_scoring", "id"), new Rows("reference_step", "reference_scoring_id")),
    /** A stretch of the audit trail, by count and hash; the entries themselves have no leaf each. */
    AUDIT_SEAL(new Rows("audit_seal", "id")),
    /** The trainee's remark under a signed record. */
    REMARK(new Rows("sheet_remark", "id")),
    /** The records a director opened to a visitor. */
    VISIT(new Rows("visitor_record", "access_id")),
    /** A change of how long records are kept. */
    RETENTION_SETTING(new Rows("retention_setting", "id")),
    /** What stays of an open sheet that was removed. */
    SHEET_REMOVED(new Rows("removed_sheet", "id")),
    /** Somebody asked for the records of a trainee to be removed after their term. */
    REMOVAL_REQUEST(new Rows("removal_request", "id")),
    /** A second person confirmed it: what stays of records whose rows are gone. */
    RECORD_REMOVAL(new Rows("record_removal", "id"), new Rows("removed_record", "removal_id")),
    /** A person named to sign new versions in place of a scorer who left. */
    VERSION_DELEGATE(new Rows("version_delegate", "id")),
    /** Somebody asked for a record to be void. */
    VOID_REQUEST(new Rows("void_request", "id")),
    /** A second person confirmed or declined that. */
    VOID_DECISION(new Rows("void_decision", "id")),
    /** A trainee contests a signed version. */
    CONTEST(new Rows("contest", "id")),
    /** What was said or decided in a contest. */
    CONTEST_STEP(new Rows("contest_step", "id")),
    /** A sheet handed to another supervisor. */
    HANDED_ON(new Rows("sheet_assignment", "id")),
    /** A published version of a rubric. */
    RUBRIC(new Rows("rubric_version", "id"), new Rows("rubric_step", "rubric_version_id")),
    /** What a second person said about the draft of a version. */
    RUBRIC_REVIEW(new Rows("rubric_review", "id")),
    /** From when on a version is in use, or a procedure takes no new cases. */
    RUBRIC_EFFECT(new Rows("rubric_effect", "id")),
    /** Experts asked whether the steps of a rubric are the right ones. */
    RUBRIC_ROUND(new Rows("rubric_round", "id"), new Rows("rubric_expert", "round_id")),
    /** What one of them answered. */
    RUBRIC_RATING(new Rows("rubric_rating", "id"), new Rows("rubric_step_rating", "rating_id")),
    /** Cases before joining, as declared. */
    PRIOR_EXPERIENCE(new Rows("prior_experience", "id")),
    /** A change of what a trainee may do. */
    ENTITLEMENT(new Rows("entitlement_change", "id")),
    /** The evidence about a trainee, frozen for a meeting. */
    EVIDENCE_PACK(new Rows("evidence_pack", "id")),
    /** A committee's decision. */
    DECISION(new Rows("committee_decision", "id")),
    /** The letter about a decision, an appeal, a suspension. */
    COMMITTEE_ACT(new Rows("committee_act", "id"), new Rows("appeal_panel", "act_id")),
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
