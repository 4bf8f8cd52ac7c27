/** Where the data lives: the embedded server, the roles, the tenant of a transaction. */
@NullMarked
package org.scrubline.platform.database;

import org.jspecify.annotations.NullMarked;
