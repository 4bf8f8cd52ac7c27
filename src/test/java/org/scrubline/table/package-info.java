/** Scoring without a network: a browser, a wire that can fail in every way, and the real server behind it. */
@NullMarked
package org.scrubline.table;

import org.jspecify.annotations.NullMarked;
