package org.scrubline.backup;

import java.sql.Connection;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

/** Whether a database may be restored into, asked by its owner. */
class EmptinessQueries {

    private static final String HAS_HISTORY = "select to_regclass('public.flyway_schema_history') is not null";
    private static final String HAS_TABLES = """
            select exists (
                select 1
                from pg_class
                where relnamespace = 'public'::regnamespace
                  and relkind in ('r', 'p', 'v', 'm'))
            """;
    private static final String HAS_ACCOUNTS = "select to_regclass('public.login_account') is not null";
    private static final String ANY_ACCOUNT = "select exists (select 1 from login_account)";
    private static final String HAS_ORGANISATIONS = "select to_regclass('public.organisation') is not null";
    private static final String LOWER_WALL = "alter table organisation no force row level security";
    private static final String ANY_ORGANISATION = "select exists (select 1 from organisation)";
    private static final String OTHERS_CONNECTED = """
            select exists (
                select 1
                from pg_stat_activity
                where datname = current_database()
                  and usename = :runtime
                  and pid <> pg_backend_pid())
            """;

    private final JdbcClient jdbc;

    /** @param connection the owner's, in a transaction that will be rolled back */
    EmptinessQueries(Connection connection) {
        this.jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
    }

    /** The sentence that says why this database may not be restored into; empty when it may. */
    Optional<String> reasonAgainst(String runtimeRole) {
        if (jdbc.sql(OTHERS_CONNECTED)
                .param("runtime", runtimeRole)
                .query(Boolean.class)
                .single()) {
            return Optional.of("A running Scrubline uses this database. Stop it first.");
        }
        if (yes(HAS_TABLES) && !yes(HAS_HISTORY)) {
            return Optional.of("This database holds tables that are not Scrubline's. Restore into one of its own.");
        }
        if (holdsAccount() || holdsOrganisation()) {
            return Optional.of("This installation holds data, and a backup is restored into an empty one only."
                    + " Name another --scrubline.data-directory, or another database.");
        }
        return Optional.empty();
    }

    private boolean holdsAccount() {
        return yes(HAS_ACCOUNTS) && yes(ANY_ACCOUNT);
    }

    /** Organisations stand behind the wall; it is lowered to see whether there are any. */
    private boolean holdsOrganisation() {
        if (!yes(HAS_ORGANISATIONS)) {
            return false;
        }
        jdbc.sql(LOWER_WALL).update();
        return yes(ANY_ORGANISATION);
    }

    private boolean yes(String query) {
        return jdbc.sql(query).query(Boolean.class).single();
    }
}
