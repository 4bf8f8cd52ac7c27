package org.scrubline.people;

/**
 * A placement as typed.
 *
 * @param trainee id of a trainee
 * @param site id of a site
 * @param first ISO date of the first day
 * @param last ISO date of the last day
 * @param share of full time, a whole number of percent
 */
public record PlacementEntry(String trainee, String site, String first, String last, String share) {}
