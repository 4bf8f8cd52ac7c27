package org.scrubline.platform.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The bundled database, used unless {@code spring.datasource.url} names a server. */
@Configuration(proxyBeanMethods = false)
@ConditionalOnProperty(name = "spring.datasource.url", havingValue = "embedded", matchIfMissing = true)
class EmbeddedDatabaseConfiguration {

    @Bean
    DataDirectory dataDirectory(@Value("${scrubline.data-directory}") Path path) throws IOException {
        return DataDirectory.prepare(path);
    }

    @Bean(destroyMethod = "close")
    EmbeddedPostgres embeddedPostgres(DataDirectory directory) throws IOException {
        return EmbeddedPostgresServer.start(directory, directory.readOrCreateSecret());
    }

    @Bean
    DatabaseAddress databaseAddress(EmbeddedPostgres server, DataDirectory directory) throws IOException, SQLException {
        String secret = directory.readOrCreateSecret();
        try (Connection superuser = server.getPostgresDatabase().getConnection()) {
            DatabaseRoles.ensure(superuser, secret);
        }
        return new DatabaseAddress("127.0.0.1", server.getPort(), secret);
    }

    @Bean
    JdbcConnectionDetails jdbcConnectionDetails(DatabaseAddress address) {
        return address.runtime();
    }

    @Bean
    FlywayConnectionDetails flywayConnectionDetails(DatabaseAddress address) {
        return address.migrations();
    }
}
