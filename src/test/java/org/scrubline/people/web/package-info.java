/** Tests of the people pages. */
@NullMarked
package org.scrubline.people.web;

import org.jspecify.annotations.NullMarked;
