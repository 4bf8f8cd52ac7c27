/** Passkeys: registering them, and telling whether what one answered is right. */
@NullMarked
package org.scrubline.platform.passkey;

import org.jspecify.annotations.NullMarked;
