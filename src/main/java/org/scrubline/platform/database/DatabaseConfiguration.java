package org.scrubline.platform.database;

import javax.sql.DataSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.support.JdbcTransactionManager;

@Configuration(proxyBeanMethods = false)
class DatabaseConfiguration {

    @Bean
    JdbcTransactionManager transactionManager(DataSource pool) {
        return new TenantTransactionManager(pool);
    }
}
