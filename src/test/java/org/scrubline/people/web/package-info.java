/** Pages of people, places and visitors. */
@NullMarked
package org.scrubline.people.web;

import org.jspecify.annotations.NullMarked;
