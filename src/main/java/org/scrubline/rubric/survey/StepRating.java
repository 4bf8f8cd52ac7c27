package org.scrubline.rubric.survey;

/**
 * What one expert says of one step.
 *
 * @param relevance 1 not relevant, 2 somewhat, 3 quite, 4 highly relevant
 * @param remark in words, may be empty
 */
public record StepRating(String step, int relevance, String remark) {}
