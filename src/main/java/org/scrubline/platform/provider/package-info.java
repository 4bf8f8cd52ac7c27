/** Log-in through an organisation's own identity provider, by OpenID Connect. */
@NullMarked
package org.scrubline.platform.provider;

import org.jspecify.annotations.NullMarked;
