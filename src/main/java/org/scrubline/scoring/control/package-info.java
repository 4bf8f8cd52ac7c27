/**
 * Control charts for yes-or-no results in the order of the cases: the learning-curve CUSUM, the CUSUM that watches for
 * a worse rate afterwards, charts of measurements, and their exact run lengths.
 */
@NullMarked
package org.scrubline.scoring.control;

import org.jspecify.annotations.NullMarked;
