package org.scrubline.archive;

import java.util.Set;

/**
 * One file of the archive.
 *
 * @param name of the file, without its ending, and of its message keys
 * @param tables whose rows about a person it holds
 * @param rows statement with the named parameters {@code tenant}, {@code person} and {@code account}
 */
record Part(String name, Set<String> tables, String rows) {

    Part {
        tables = Set.copyOf(tables);
    }

    /** Whole rows of one table. */
    static Part of(String name, String table, String condition) {
        return new Part(
                name, Set.of(table), "select * from " + table + " where tenant_id = :tenant and (" + condition + ")");
    }
}
