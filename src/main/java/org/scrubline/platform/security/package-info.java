/** Log-in, sessions, throttling, response headers. */
@NullMarked
package org.scrubline.platform.security;

import org.jspecify.annotations.NullMarked;
