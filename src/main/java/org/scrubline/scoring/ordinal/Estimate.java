package org.scrubline.scoring.ordinal;

/**
 * An estimate.
 *
 * @param value of the parameter
 * @param standardError from the curvature of the log-likelihood
 */
public record Estimate(double value, double standardError) {}
