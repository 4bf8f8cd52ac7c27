/**
 * How far scores can be trusted: agreement between raters, internal consistency, intraclass correlations,
 * generalizability and decision studies of balanced designs.
 */
@NullMarked
package org.scrubline.scoring.reliability;

import org.jspecify.annotations.NullMarked;
