package org.scrubline.ledger;

import java.io.IOException;
import java.io.Writer;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.ServiceLoader;
import java.util.function.LongConsumer;
import javax.sql.DataSource;
import org.scrubline.ledger.check.CheckResult;
import org.scrubline.ledger.check.DatabaseCheck;
import org.scrubline.ledger.check.EvidenceFile;
import org.scrubline.ledger.check.Known;
import org.scrubline.ledger.note.VerifierKey;
import org.scrubline.platform.TenantScope;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.stereotype.Component;

/** Reads everything at one moment, beside the server's own transactions: a long look must not hold one of them. */
@Component
class EvidenceReader {

    private final DataSource database;
    private final LedgerIdentity identity;

    EvidenceReader(DataSource database, LedgerIdentity identity) {
        this.database = database;
        this.identity = identity;
    }

    private interface Look<T> {
        T at(Connection connection) throws SQLException, IOException;
    }

    /** Checks with the key that lies in this server's key file. */
    CheckResult check(LongConsumer done) {
        Known known = new Known(List.of(VerifierKey.parse(identity.verifierKey())), List.of());
        try {
            return look(connection -> new DatabaseCheck(connection, TenantScope.require())
                    .run(known, ServiceLoader.load(RecordCheck.class), done));
        } catch (IOException e) {
            throw new IllegalStateException("nothing was written", e);
        }
    }

    void export(Writer out) throws IOException {
        look(connection -> {
            EvidenceFile.write(connection, TenantScope.require(), out, done -> {});
            return true;
        });
    }

    private <T> T look(Look<T> look) throws IOException {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            connection.setReadOnly(true);
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
            try {
                return look.at(connection);
            } finally {
                connection.rollback();
            }
        } catch (SQLException e) {
            throw new DataAccessResourceFailureException("reading the evidence", e);
        }
    }
}
