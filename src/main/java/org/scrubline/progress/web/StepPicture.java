package org.scrubline.progress.web;

/**
 * The small picture of one step, in units of its own drawing, nothing left to reckon.
 *
 * @param id unique on the page
 * @param name code and name, with the word for a critical one
 * @param now the chance at the newest case with its band, and the raw scores, in words
 * @param band outline of the 90 % band
 * @param line the curve, broken where the trainee was away
 * @param high short strokes at the top, one a score at 4 or 5
 * @param low short strokes at the foot, one a score at 1 to 3
 */
record StepPicture(String id, String name, String now, String band, String line, String high, String low) {}
