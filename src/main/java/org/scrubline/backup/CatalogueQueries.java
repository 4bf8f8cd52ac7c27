package org.scrubline.backup;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.backup.file.Manifest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

/** What the database says about itself, asked on one connection inside its transaction. */
class CatalogueQueries {

    private static final String TABLES = """
            select c.relname,
                   c.relrowsecurity,
                   has_table_privilege(c.oid, 'SELECT') as readable,
                   array(select a.attname
                         from pg_attribute a
                         where a.attrelid = c.oid
                           and a.attnum > 0
                           and not a.attisdropped
                           and a.attgenerated = ''
                         order by a.attnum)::text[] as columns,
                   array(select a.attname
                         from pg_index x
                         cross join unnest(x.indkey) with ordinality as k (attnum, place)
                         join pg_attribute a on a.attrelid = x.indrelid and a.attnum = k.attnum
                         where x.indrelid = c.oid
                           and x.indisprimary
                         order by k.place)::text[] as key
            from pg_class c
            where c.relnamespace = 'public'::regnamespace
              and c.relkind = 'r'
            order by c.relname
            """;
    private static final String ORGANISATIONS = """
            select distinct tenant_id
            from account_organisation
            order by tenant_id
            """;
    private static final String READS_HISTORY = """
            select count(*) = 1
            from pg_class c
            where c.oid = to_regclass('public.flyway_schema_history')
              and has_table_privilege(c.oid, 'SELECT')
            """;
    private static final String SCHEMA_VERSION = """
            select version
            from flyway_schema_history
            where success
              and version is not null
            order by installed_rank desc
            limit 1
            """;
    private static final String HAS_CHECKPOINTS = """
            select count(*) = 3
            from pg_attribute
            where attrelid = to_regclass('public.ledger_checkpoint')
              and attname in ('tenant_id', 'size', 'note')
            """;
    private static final String NEWEST_CHECKPOINT = """
            select tenant_id, note
            from ledger_checkpoint
            where tenant_id = :tenant
            order by size desc
            limit 1
            """;

    private final JdbcClient jdbc;

    CatalogueQueries(Connection connection) {
        this.jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
    }

    List<StoredTable> tables() {
        return jdbc.sql(TABLES).query(CatalogueQueries::table).list();
    }

    /** Every organisation somebody can log in to. */
    List<UUID> organisations() {
        return jdbc.sql(ORGANISATIONS).query(UUID.class).list();
    }

    /** The newest migration applied; empty when there is none or this role may not know. */
    Optional<String> schemaVersion() {
        return jdbc.sql(READS_HISTORY).query(Boolean.class).single()
                ? jdbc.sql(SCHEMA_VERSION).query(String.class).optional()
                : Optional.empty();
    }

    boolean hasCheckpoints() {
        return jdbc.sql(HAS_CHECKPOINTS).query(Boolean.class).single();
    }

    /** To be asked with the organisation set on the transaction. */
    Optional<Manifest.Checkpoint> newestCheckpoint(UUID tenant) {
        return jdbc.sql(NEWEST_CHECKPOINT)
                .param("tenant", tenant)
                .query((row, number) ->
                        new Manifest.Checkpoint(row.getObject("tenant_id", UUID.class), row.getString("note")))
                .optional();
    }

    private static StoredTable table(ResultSet row, int number) throws SQLException {
        return new StoredTable(
                row.getString("relname"),
                row.getBoolean("relrowsecurity"),
                row.getBoolean("readable"),
                names(row, "columns"),
                names(row, "key"));
    }

    private static List<String> names(ResultSet row, String column) throws SQLException {
        return List.of((String[]) row.getArray(column).getArray());
    }
}
