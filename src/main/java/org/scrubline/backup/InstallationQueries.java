package org.scrubline.backup;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class InstallationQueries {

    private static final String SERVER_VERSION = "select current_setting('server_version')";
    private static final String SCHEMA_VERSION = """
            select version
            from flyway_schema_history
            where success
              and version is not null
            order by installed_rank desc
            limit 1
            """;

    private final JdbcClient jdbc;

    InstallationQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    String serverVersion() {
        return jdbc.sql(SERVER_VERSION).query(String.class).single();
    }

    String schemaVersion() {
        return jdbc.sql(SCHEMA_VERSION).query(String.class).single();
    }
}
