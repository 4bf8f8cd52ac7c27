package org.scrubline.platform;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class TableStatisticsTests {

    @Autowired
    TableStatistics statistics;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    JdbcClient jdbc;

    @Test
    void countWhatTheTransactionOfTheCallerHasWritten() {
        TestOrganisations.TestOrganisation organisation = organisations.open();
        organisation.in(() -> transaction.execute(status -> {
            organisation.join("Ansel Verrin", Role.SUPERVISOR);
            statistics.gather();
            assertThat(known()).isEqualTo(there());
            return true;
        }));
    }

    private int known() {
        return jdbc.sql("select cast(reltuples as int) from pg_class where relname = 'login_account'")
                .query(Integer.class)
                .single();
    }

    private int there() {
        return jdbc.sql("select count(*) from login_account")
                .query(Integer.class)
                .single();
    }
}
