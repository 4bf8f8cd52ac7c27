package org.scrubline.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;

/** Copies rows out of and into tables as PostgreSQL's own text lines, without holding them in memory. */
class RowStore {

    /** How values are written must not depend on anybody's settings. */
    private static final List<String> PLAIN_TEXT = List.of(
            "set local datestyle = 'ISO, YMD'",
            "set local intervalstyle = 'postgres'",
            "set local timezone = 'UTC'",
            "set local extra_float_digits = 1",
            "set local bytea_output = 'hex'",
            "set local xmlbinary = 'base64'",
            "set local synchronize_seqscans = off",
            "set local statement_timeout = 0",
            "set local idle_in_transaction_session_timeout = 0");

    private static final String SET_ORGANISATION = "select set_config('scrubline.tenant', ?, true)";

    private final Connection connection;
    private final CopyManager copy;

    RowStore(Connection connection) throws SQLException {
        this.connection = connection;
        this.copy = connection.unwrap(PGConnection.class).getCopyAPI();
        try (Statement statement = connection.createStatement()) {
            for (String setting : PLAIN_TEXT) {
                statement.execute(setting);
            }
        }
    }

    /** Makes one organisation's rows visible for the rest of the transaction. */
    void enter(UUID tenant) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(SET_ORGANISATION)) {
            statement.setString(1, tenant.toString());
            statement.execute();
        }
    }

    /**
     * Writes a table's rows, one a line, in the order of the primary key.
     *
     * @param tenant the organisation entered, or null for a table that belongs to none
     */
    void copyOut(StoredTable table, @Nullable UUID tenant, OutputStream out) throws IOException, SQLException {
        String where = tenant == null ? "" : " where tenant_id = '" + tenant + "'";
        String order = table.key().isEmpty() ? "" : " order by " + StoredTable.quoted(table.key());
        copy.copyOut(
                "copy (select " + StoredTable.quoted(table.columns()) + " from " + table.quotedName() + where + order
                        + ") to stdout",
                out);
    }

    /** Adds lines to a table and answers how many. */
    long copyIn(String table, List<String> columns, InputStream lines) throws IOException, SQLException {
        return copy.copyIn(
                "copy " + StoredTable.quoted(table) + " (" + StoredTable.quoted(columns) + ") from stdin",
                lines,
                1 << 16);
    }
}
