package org.scrubline.outcome.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * Outcomes of a programme by one definition.
 *
 * @param definition in full; stands wherever a rate does
 * @param facts sentences on the whole programme
 * @param funnel null while there is none to draw
 * @param points the same numbers as the funnel, without names
 * @param few why trainees with few cases have no rate
 * @param enters whether the reader enters outcomes too
 */
record ProgrammeOutcomesPage(
        String programme,
        List<Option> programmes,
        List<Option> families,
        String family,
        List<Option> sets,
        String set,
        String definition,
        boolean none,
        List<String> facts,
        @Nullable FunnelDrawing funnel,
        String funnelSummary,
        TableView points,
        TableView trainees,
        String few,
        TableView early,
        String lowAt,
        TableView care,
        boolean enters) {}
