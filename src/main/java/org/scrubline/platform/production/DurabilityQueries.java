package org.scrubline.platform.production;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What the database does so that a power cut loses nothing it said was stored. */
@Repository
class DurabilityQueries {

    private static final String OFF = """
            select name
            from pg_settings
            where name in ('fsync', 'full_page_writes', 'synchronous_commit')
              and setting = 'off'
            order by name
            """;

    private final JdbcClient jdbc;

    DurabilityQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Names of the database's settings that are off and must not be. */
    List<String> off() {
        return jdbc.sql(OFF).query(String.class).list();
    }
}
