/** The pages and files of entries. */
@NullMarked
package org.scrubline.audit.web;

import org.jspecify.annotations.NullMarked;
