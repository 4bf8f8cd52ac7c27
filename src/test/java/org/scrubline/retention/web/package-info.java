/** The page of times and holds. */
@NullMarked
package org.scrubline.retention.web;

import org.jspecify.annotations.NullMarked;
