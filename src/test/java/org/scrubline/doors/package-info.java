/** The doors into the application, met with somebody else's provider of identities and of accounts. */
@NullMarked
package org.scrubline.doors;

import org.jspecify.annotations.NullMarked;
