package org.scrubline.platform.database;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.datasource.ConnectionHolder;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Tells the database, at the start of each transaction and for that transaction only, whose rows it may touch. A
 * session setting would stay on the pooled connection and leak to the next borrower.
 */
class TenantTransactionManager extends JdbcTransactionManager {

    private static final String BEGIN = """
            select set_config('scrubline.tenant', ?, true), set_config('plan_cache_mode', ?, true)
            """;

    private final DataSource pool;

    TenantTransactionManager(DataSource pool) {
        super(pool);
        this.pool = pool;
    }

    @Override
    protected void doBegin(Object transaction, TransactionDefinition definition) {
        super.doBegin(transaction, definition);
        ConnectionHolder holder = currentHolder();
        if (holder == null) {
            throw new CannotCreateTransactionException("no connection bound to the transaction");
        }
        try {
            tell(holder.getConnection(), definition.isReadOnly() ? "force_custom_plan" : "auto");
        } catch (SQLException | RuntimeException e) {
            doCleanupAfterCompletion(transaction);
            throw new CannotCreateTransactionException("could not set the organisation of the transaction", e);
        }
    }

    private @Nullable ConnectionHolder currentHolder() {
        return (ConnectionHolder) TransactionSynchronizationManager.getResource(pool);
    }

    private static void tell(Connection connection, String plans) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(BEGIN)) {
            statement.setString(1, TenantScope.current().map(Object::toString).orElse(""));
            statement.setString(2, plans);
            statement.execute();
        }
    }
}
