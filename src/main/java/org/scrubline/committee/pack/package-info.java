/** What a frozen evidence pack holds, how it is made from the records of an instant, and the checklist per level. */
@NullMarked
package org.scrubline.committee.pack;

import org.jspecify.annotations.NullMarked;
