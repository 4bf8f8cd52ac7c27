/** One shared Chromium for the tests that need a real browser, and the accessibility check that runs in it. */
@NullMarked
package org.scrubline.browser;

import org.jspecify.annotations.NullMarked;
