package org.scrubline.committee.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * Frozen evidence about one trainee.
 *
 * @param facts the cut-off, the engine, how many records
 * @param cautions message keys
 * @param families what the evidence says on each level
 * @param training what levels without a gate ask of the training record; empty in evidence of before
 * @param notes records with something beside them, in sentences
 * @param decisions taken on it
 * @param write where the chair writes a decision; null for everyone else
 * @param rebuilt what a new making gave; null until asked for
 */
record EvidencePage(
        String href,
        String title,
        List<Fact> facts,
        List<String> cautions,
        List<FamilyView> families,
        List<TrainingView> training,
        List<ProcedureView> procedures,
        TableView scorers,
        TableView records,
        List<String> notes,
        TableView rubrics,
        List<Link> decisions,
        @Nullable Link write,
        String back,
        String hash,
        @Nullable Rebuilt rebuilt) {

    /** Whether making it again gave the same text. */
    record Rebuilt(boolean same, String text) {}

    /** One family with a section a level. */
    record FamilyView(String title, String basis, List<LevelView> levels) {}

    /**
     * What the evidence says on a level.
     *
     * @param answer one of three phrases, with the level
     * @param gate which gate is not met, in a sentence; null when all are
     */
    record LevelView(
            String id,
            String title,
            String answer,
            boolean supports,
            @Nullable String gate,
            List<AskView> asks) {}

    /** What a level asks of the training record. */
    record TrainingView(String title, List<AskView> asks) {}

    /** A row of the checklist; {@code records} lead to what is behind the number. */
    record AskView(String asks, String there, boolean met, List<Link> records) {}

    /**
     * One procedure.
     *
     * @param shortfalls what is short for showing or supporting, in sentences
     * @param drawing null while no modelled number may be shown
     */
    record ProcedureView(
            String id,
            String title,
            List<Fact> facts,
            List<String> shortfalls,
            @Nullable PackDrawing drawing,
            String summary,
            @Nullable TableView points,
            @Nullable TableView next,
            TableView steps,
            String verdicts,
            String bands,
            String chart,
            String fit) {}
}
