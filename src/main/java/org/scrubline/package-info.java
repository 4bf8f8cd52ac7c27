/**
 * Scrubline: step-wise assessment of trainees in filtration surgery. Every direct sub-package is a room; its
 * {@code package-info} says what it is for and which rooms it may use.
 */
@NullMarked
package org.scrubline;

import org.jspecify.annotations.NullMarked;
