/** Tests of the trainee's pages. */
@NullMarked
package org.scrubline.progress.web;

import org.jspecify.annotations.NullMarked;
