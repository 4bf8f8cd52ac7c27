package org.scrubline.cohort.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * How supervisors score: all of them for the director, or one for that supervisor alone.
 *
 * @param facts what it rests on
 * @param few what there is too little of; null when there is enough
 * @param signals what stands out; may be empty
 * @param caption what the figures are
 * @param table the figures; empty while there is too little
 */
record ScorerPage(
        String programme,
        List<CohortPage.Option> programmes,
        List<CohortPage.Fact> facts,
        @Nullable String few,
        List<SignalPage.Line> signals,
        String caption,
        TableView table) {}
