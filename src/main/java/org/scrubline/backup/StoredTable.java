package org.scrubline.backup;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A table as the catalogue shows it.
 *
 * @param name its name
 * @param walled whether its rows belong to organisations and are seen one organisation at a time
 * @param readable whether the connected role may read it
 * @param columns in their order, without generated ones
 * @param key primary key columns; rows are written in their order
 */
record StoredTable(String name, boolean walled, boolean readable, List<String> columns, List<String> key) {

    boolean travels() {
        return !LeftOut.TABLES.containsKey(name);
    }

    String quotedName() {
        return quoted(name);
    }

    static String quoted(String identifier) {
        return '"' + identifier.replace("\"", "\"\"") + '"';
    }

    static String quoted(List<String> identifiers) {
        return identifiers.stream().map(StoredTable::quoted).collect(Collectors.joining(", "));
    }
}
