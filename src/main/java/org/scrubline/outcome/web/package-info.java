/** Pages of outcome. */
@NullMarked
package org.scrubline.outcome.web;

import org.jspecify.annotations.NullMarked;
