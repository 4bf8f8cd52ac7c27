package org.scrubline.ledger.check;

import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import java.util.UUID;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.platform.database.TestDatabase;

/** What a superuser of the database can do, with no constraint in the way; undone when the verifier has looked. */
final class Attack {

    private static final Iterable<RecordCheck> CHECKS = ServiceLoader.load(RecordCheck.class);

    /** The damage. */
    interface Damage {
        void on(Attack database) throws Exception;
    }

    final Connection connection;
    final UUID tenant;

    private Attack(Connection connection, UUID tenant) {
        this.connection = connection;
        this.tenant = tenant;
    }

    /** Does the damage and answers what the verifier says to someone who knows this from before. */
    static CheckResult check(UUID tenant, Known known, Damage damage) throws Exception {
        try (Connection connection = TestDatabase.superuser()) {
            connection.setAutoCommit(false);
            try {
                Attack attack = new Attack(connection, tenant);
                attack.run("set local session_replication_role = replica");
                damage.on(attack);
                return new DatabaseCheck(connection, tenant).run(known, CHECKS, leaves -> {});
            } finally {
                connection.rollback();
            }
        }
    }

    /** Removes every constraint of a table, as its owner may. */
    void unfetter(String table) throws SQLException {
        for (String name : column("""
                select quote_ident(conname)
                from pg_constraint
                where conrelid = '%s'::regclass and contype in ('c', 'u', 'p', 'f', 'x')
                """.formatted(table))) {
            run("alter table " + table + " drop constraint " + name + " cascade");
        }
        for (String name : column("""
                select quote_ident(attname)
                from pg_attribute
                where attrelid = '%s'::regclass and attidentity <> ''
                """.formatted(table))) {
            run("alter table " + table + " alter column " + name + " drop identity");
        }
    }

    int run(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            return statement.executeUpdate(sql.replace(":tenant", "'" + tenant + "'"));
        }
    }

    List<String> column(String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query.replace(":tenant", "'" + tenant + "'"))) {
            List<String> values = new ArrayList<>();
            while (rows.next()) {
                values.add(rows.getString(1));
            }
            return values;
        }
    }

    static List<String> catalogue(String query) throws SQLException, IOException {
        try (Connection connection = TestDatabase.superuser()) {
            return new Attack(connection, new UUID(0, 0)).column(query);
        }
    }
}
