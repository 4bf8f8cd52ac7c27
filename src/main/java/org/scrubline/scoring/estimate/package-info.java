/**
 * Estimates with their uncertainty: intervals of proportions and counts, funnel limits, standard setting, shapes of
 * learning curves, time to an event.
 */
@NullMarked
package org.scrubline.scoring.estimate;

import org.jspecify.annotations.NullMarked;
