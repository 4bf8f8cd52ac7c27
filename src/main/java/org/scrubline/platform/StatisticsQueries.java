package org.scrubline.platform;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class StatisticsQueries implements TableStatistics {

    private final JdbcClient jdbc;

    StatisticsQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public void gather() {
        jdbc.sql("select gather_statistics()").query((row, n) -> row).single();
    }
}
