package org.scrubline.demo.plan;

import java.util.Map;
import org.scrubline.rubric.Band;

/**
 * A recorded operation all supervisors score.
 *
 * @param month of the plan in which that happens
 * @param scores levels 1 to 5 by supervisor, such as S01, and step code; a step without one cannot be seen on the film
 */
public record PlannedClip(
        String reference, String title, int month, Band band, Map<String, Map<String, Integer>> scores) {}
