package org.scrubline.rubric.format;

/**
 * Something the format does not allow.
 *
 * @param line where in the text, from 1 on; 0 when it belongs to no line
 * @param message names step and key
 */
public record RubricFault(int line, String message) {}
