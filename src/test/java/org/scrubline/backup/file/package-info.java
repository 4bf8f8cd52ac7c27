/** Tests of backup and restore, on files and on real database servers of their own. */
@NullMarked
package org.scrubline.backup.file;

import org.jspecify.annotations.NullMarked;
