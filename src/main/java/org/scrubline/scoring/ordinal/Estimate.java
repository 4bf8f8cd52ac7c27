package org.scrubline.scoring.ordinal;

/**
 * An estimate.
 *
 * @param value of the parameter, in logits
 * @param standardError from the curvature of the log-likelihood, in logits
 */
public record Estimate(double value, double standardError) {}
