/** Test words shared by all rooms: the database, the context, organisations made for one test. */
@NullMarked
package org.scrubline.support;

import org.jspecify.annotations.NullMarked;
