package org.scrubline.progress.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * The competency curve with its words.
 *
 * @param missing what is short before a modelled number is shown, in sentences; empty when it is shown
 * @param numbers null while something is missing
 * @param sources from which data and by which engine
 */
record CurveView(List<String> missing, @Nullable Numbers numbers, String sources) {

    /**
     * Everything modelled.
     *
     * @param strength the evidence index and what it means
     * @param steps chance of each step, its raw share, and why the two are far apart
     * @param nextCase chance of the whole case against each standard
     * @param undecided what is short before the numbers may support a proposal, in sentences
     * @param further in how many further cases the evidence might support each standard, in sentences
     * @param panel the steps over the cases
     */
    record Numbers(
            String summary,
            CurveDrawing drawing,
            TableView table,
            String strength,
            TableView steps,
            TableView nextCase,
            List<String> undecided,
            List<String> further,
            StepPanel panel) {}
}
