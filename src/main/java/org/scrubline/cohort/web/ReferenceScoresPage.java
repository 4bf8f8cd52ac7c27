package org.scrubline.cohort.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * How alike reference cases were scored: all supervisors for the director, or one beside the others for that one alone.
 *
 * @param listHref the reference cases themselves
 * @param counts scorers, steps and pairs it rests on
 * @param few what there is too little of; null when there is enough
 * @param agreement the coefficient and the shares, in sentences; empty while there is too little
 * @param own the reader's difference, in a sentence; null on the director's page
 * @param apart steps with a difference of a level or more, in sentences; may be empty
 * @param caption what the table says
 * @param table by supervisor for a director, by step for one supervisor; no rows while there is too little
 */
record ReferenceScoresPage(
        String programme,
        List<CohortPage.Option> programmes,
        String listHref,
        List<CohortPage.Fact> counts,
        @Nullable String few,
        List<String> agreement,
        @Nullable String own,
        List<String> apart,
        String caption,
        TableView table) {}
