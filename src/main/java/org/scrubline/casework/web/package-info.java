/** Pages of casework. */
@NullMarked
package org.scrubline.casework.web;

import org.jspecify.annotations.NullMarked;
