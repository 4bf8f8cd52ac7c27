/** What the organisation's directory speaks to, and the page of its tokens. */
@NullMarked
package org.scrubline.provision.web;

import org.jspecify.annotations.NullMarked;
