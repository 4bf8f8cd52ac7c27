package org.scrubline.demo.plan;

import java.util.List;
import org.scrubline.casework.Eye;
import org.scrubline.rubric.Band;

/**
 * What was operated.
 *
 * @param number place in time among all cases, from 0
 * @param factors complexity factors that give the band
 */
record Operation(int number, Slot slot, String procedure, Band band, List<String> factors, Eye eye) {}
