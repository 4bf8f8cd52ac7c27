/** The pages of sign-off: review and sign, the signed record, the lists of both sides. */
@NullMarked
package org.scrubline.signoff.web;

import org.jspecify.annotations.NullMarked;
