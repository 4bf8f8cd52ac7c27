/** Who looked at my record, and what was done in the programme; both as pages and as files. */
@NullMarked
package org.scrubline.audit.web;

import org.jspecify.annotations.NullMarked;
