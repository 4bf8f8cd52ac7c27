/** The trainee's pages: numbers, chart, and the sheets behind each number. */
@NullMarked
package org.scrubline.progress.web;

import org.jspecify.annotations.NullMarked;
