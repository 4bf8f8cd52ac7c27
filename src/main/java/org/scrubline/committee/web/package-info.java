/** Pages of the committee. */
@NullMarked
package org.scrubline.committee.web;

import org.jspecify.annotations.NullMarked;
