/** Tests of the pages of sign-off. */
@NullMarked
package org.scrubline.signoff.web;

import org.jspecify.annotations.NullMarked;
