/** Tests of backup and restore, on files and on real database servers of their own. */
@NullMarked
package org.scrubline.backup;

import org.jspecify.annotations.NullMarked;
