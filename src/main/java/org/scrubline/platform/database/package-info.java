/** Where the data lives: the embedded server, the roles, the tenant of a transaction. */
@NamedInterface("database")
@NullMarked
package org.scrubline.platform.database;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
