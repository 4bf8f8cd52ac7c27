package org.scrubline.ledger.check;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.NoSuchElementException;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessResourceFailureException;

/** The stored subtree hashes, one after the other. */
final class NodeCursor implements Iterator<SubtreeCheck.Stored>, AutoCloseable {

    private final PreparedStatement statement;
    private final ResultSet rows;
    private SubtreeCheck.@Nullable Stored next;

    /** Takes the statement over and closes it. */
    NodeCursor(PreparedStatement statement) throws SQLException {
        this.statement = statement;
        this.rows = statement.executeQuery();
        this.next = read();
    }

    private SubtreeCheck.@Nullable Stored read() throws SQLException {
        return rows.next()
                ? new SubtreeCheck.Stored(rows.getInt("level"), rows.getLong("position"), hash(rows.getBytes("hash")))
                : null;
    }

    private static String hash(byte[] bytes) {
        return HexFormat.of().formatHex(bytes);
    }

    @Override
    public boolean hasNext() {
        return next != null;
    }

    @Override
    public SubtreeCheck.Stored next() {
        if (next == null) {
            throw new NoSuchElementException();
        }
        SubtreeCheck.Stored current = next;
        try {
            next = read();
        } catch (SQLException e) {
            throw new DataAccessResourceFailureException("reading the subtrees", e);
        }
        return current;
    }

    @Override
    public void close() throws SQLException {
        rows.close();
        statement.close();
    }
}
