package org.scrubline.signoff;

import org.scrubline.platform.Recognised;

/**
 * What a recognised person says.
 *
 * @param text tidied, may be empty
 * @param how they were recognised
 */
record Spoken(String text, Recognised how) {}
