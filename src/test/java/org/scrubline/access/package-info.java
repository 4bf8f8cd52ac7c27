/** Who gets what answer on which page: the written access matrix, and the wall of the database beneath it. */
@NullMarked
package org.scrubline.access;

import org.jspecify.annotations.NullMarked;
