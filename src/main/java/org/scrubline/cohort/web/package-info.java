/** The pages of the cohort. */
@NullMarked
package org.scrubline.cohort.web;

import org.jspecify.annotations.NullMarked;
