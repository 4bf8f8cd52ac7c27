package org.scrubline.progress.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * The page of one trainee and one procedure, every sentence and number ready to print.
 *
 * @param procedures what can be chosen
 * @param procedure code of the one shown
 * @param href this page without its choices
 * @param verdicts number of sheets by verdict
 * @param evidence what there is too little of
 * @param practise up to three steps; may be empty
 * @param chart null while there is too little to draw it
 */
record ProgressPage(
        UUID traineeId,
        String traineeName,
        String href,
        String procedure,
        String title,
        List<Option> procedures,
        List<Fact> facts,
        List<Fact> verdicts,
        EvidenceNote evidence,
        List<Practise> practise,
        @Nullable ChartView chart,
        TableView steps) {

    /** An entry of a choice. */
    record Option(String value, String label) {}

    /** A number and what it counts. */
    record Fact(String value, String text) {}

    /**
     * What is missing before more can be said.
     *
     * @param open whether shares and the chart are printed
     * @param shown what is short for that, in sentences
     * @param supports what is short for a proposal to a committee
     */
    record EvidenceNote(boolean open, List<String> shown, List<String> supports) {}

    /**
     * A step to practise next.
     *
     * @param count how often at 4 or 5, in words
     * @param tip one thing to do; empty when the rubric has none
     */
    record Practise(String code, String name, String count, String tip, String href) {}

    /**
     * The chart with its words.
     *
     * @param strokes what the strokes under the curve can show
     * @param stroke the choice in force
     * @param meaning what the chart says
     * @param limits what it does not say
     */
    record ChartView(
            String title,
            String summary,
            ChartDrawing drawing,
            TableView table,
            List<Option> strokes,
            String stroke,
            String meaning,
            String limits) {}
}
