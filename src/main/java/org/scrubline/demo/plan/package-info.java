/**
 * The invented programme on paper: everything that happened in it, drawn from a seed. Touches no database and no clock;
 * the same seed, first day and scale give the same plan.
 */
@NamedInterface("plan")
@NullMarked
package org.scrubline.demo.plan;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
