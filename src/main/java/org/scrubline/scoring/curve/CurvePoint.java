package org.scrubline.scoring.curve;

/**
 * A trainee's level at one case, over all steps, without complexity. Logits above the threshold of the curve's level:
 * at 0 the mean step reaches that level with chance ½ in a plain case on an ordinary day.
 *
 * @param caseId the case
 * @param order its position in time
 * @param experience cases done before it
 * @param gapExcess months away before it, beyond the free 60 days; those before dropped cases included
 * @param level as judged by the mean supervisor of the programme
 * @param sd posterior standard deviation of {@code level}, without factor, 0 or more
 * @param low lower end of the 90 % band, {@code level - 1.645 × 1.12 sd}
 * @param high upper end, {@code level + 1.645 × 1.12 sd}
 * @param plainLevel the same as judged by a supervisor of severity 0, for comparison across programmes
 * @param plainSd its standard deviation
 */
public record CurvePoint(
        String caseId,
        long order,
        double experience,
        double gapExcess,
        double level,
        double sd,
        double low,
        double high,
        double plainLevel,
        double plainSd) {}
