/** The second factor of an account: codes of an authenticator app, and recovery codes. */
@NullMarked
package org.scrubline.platform.factor;

import org.jspecify.annotations.NullMarked;
