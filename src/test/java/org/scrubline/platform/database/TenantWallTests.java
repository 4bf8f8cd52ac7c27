package org.scrubline.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.TenantScope;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class TenantWallTests {

    private static final String SITES = "select tenant_id from site";

    @Autowired
    TestOrganisations organisations;

    @Autowired
    JdbcConnectionDetails connection;

    @Test
    void onePooledConnectionNeverShowsARowOfTheOrganisationBefore() {
        TestOrganisation a = organisations.open();
        TestOrganisation b = organisations.open();
        try (HikariDataSource pool = poolOfOne()) {
            JdbcClient jdbc = JdbcClient.create(pool);
            TransactionTemplate transaction = new TransactionTemplate(new TenantTransactionManager(pool));

            assertThat(sites(jdbc, transaction, a.tenant())).containsExactly(a.tenant());
            List<UUID> nobodys = transaction.execute(
                    status -> jdbc.sql(SITES).query(UUID.class).list());
            assertThat(nobodys)
                    .as("a transaction without an organisation, on the connection just used")
                    .isEmpty();
            assertThat(jdbc.sql(SITES).query(UUID.class).list())
                    .as("no transaction at all")
                    .isEmpty();
            assertThat(sites(jdbc, transaction, b.tenant())).containsExactly(b.tenant());
        }
    }

    @Test
    void aRowForAnotherOrganisationCannotBeWritten() {
        TestOrganisation a = organisations.open();
        TestOrganisation b = organisations.open();
        try (HikariDataSource pool = poolOfOne()) {
            JdbcClient jdbc = JdbcClient.create(pool);
            TransactionTemplate transaction = new TransactionTemplate(new TenantTransactionManager(pool));

            assertThat(catchThrowable(() -> TenantScope.run(
                            a.tenant(),
                            () -> transaction.executeWithoutResult(status -> jdbc.sql("""
                                            insert into site (tenant_id, id, code, name, zone)
                                            values (:tenant, :id, 'XX', 'Foreign', 'UTC')
                                            """)
                                    .param("tenant", b.tenant())
                                    .param("id", UUID.randomUUID())
                                    .update()))))
                    .rootCause()
                    .hasMessageContaining("row-level security");
        }
    }

    private static List<UUID> sites(JdbcClient jdbc, TransactionTemplate transaction, UUID tenant) {
        return TenantScope.call(
                tenant,
                () -> transaction.execute(
                        status -> jdbc.sql(SITES).query(UUID.class).list()));
    }

    private HikariDataSource poolOfOne() {
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(connection.getJdbcUrl());
        config.setUsername(connection.getUsername());
        config.setPassword(connection.getPassword());
        config.setMaximumPoolSize(1);
        return new HikariDataSource(config);
    }
}
