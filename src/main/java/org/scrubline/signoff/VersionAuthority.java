package org.scrubline.signoff;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The one person who may sign the next version of a sheet, and by which right. Whoever was given it last has it.
 *
 * @param grantedBy the statement that gave it; null for the scorer
 */
record VersionAuthority(
        UUID personId, VersionBasis basis, @Nullable UUID grantedBy) {}
