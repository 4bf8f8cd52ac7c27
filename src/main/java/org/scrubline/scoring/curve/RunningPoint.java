package org.scrubline.scoring.curve;

/**
 * What was known right after one assessment.
 *
 * @param assessment id
 * @param caseId its case
 * @param level level over all steps, severity 0, no complexity, in logits
 * @param sd its standard deviation, 0 or more
 * @param innovation distance of the assessment from its prediction, in standard deviations; above 0 = better than
 *     predicted, standard normal when on course
 */
public record RunningPoint(String assessment, String caseId, double level, double sd, double innovation) {}
