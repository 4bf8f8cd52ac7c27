package org.scrubline.progress.web;

import java.util.List;

/**
 * Every step as a small picture on one scale, and the same numbers as a table.
 *
 * @param summary what each picture shows
 * @param wantedY height of the line of the wanted chance
 * @param wanted that chance, in percent
 * @param codes columns of the table, one a step
 * @param rows one a case
 */
record StepPanel(
        String summary,
        int width,
        int height,
        int left,
        int right,
        int top,
        int base,
        int wantedY,
        int wanted,
        List<StepPicture> pictures,
        List<String> codes,
        List<Row> rows) {

    /** One case; a cell is the chance with its band and the scores of the step. */
    record Row(String number, List<String> cells) {}
}
