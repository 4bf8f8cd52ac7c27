/**
 * Work without a reader: jobs that come back and jobs asked for, kept in the database so that neither a restart nor a
 * second server loses or doubles one.
 */
@NamedInterface("jobs")
@NullMarked
package org.scrubline.platform.jobs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
