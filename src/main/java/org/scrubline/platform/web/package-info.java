/** The web shell: layout model, error pages, request screening. */
@NullMarked
package org.scrubline.platform.web;

import org.jspecify.annotations.NullMarked;
