/**
 * The evidence ledger: an append-only Merkle tree for each organisation. A leaf fixes the rows of one record at the
 * moment it was made, in the same transaction, so that any later change of a row, a leaf or their order is found by
 * whoever holds an older root.
 */
@ApplicationModule(
        displayName = "Ledger",
        allowedDependencies = {"platform", "platform :: jobs", "platform :: database"})
@NullMarked
package org.scrubline.ledger;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
