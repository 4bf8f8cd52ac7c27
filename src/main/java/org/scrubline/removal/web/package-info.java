/** The page of removals. */
@NullMarked
package org.scrubline.removal.web;

import org.jspecify.annotations.NullMarked;
