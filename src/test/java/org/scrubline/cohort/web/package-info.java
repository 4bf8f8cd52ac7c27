/** Tests of the director's pages. */
@NullMarked
package org.scrubline.cohort.web;

import org.jspecify.annotations.NullMarked;
