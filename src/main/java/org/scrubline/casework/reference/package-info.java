/**
 * Recorded operations that every supervisor of a programme scores, to see whether they score alike. They are about no
 * trainee: tables of their own that no curve, count, experience, outcome or evidence for a committee reads.
 */
@NamedInterface("reference")
@NullMarked
package org.scrubline.casework.reference;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
