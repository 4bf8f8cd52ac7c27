package org.scrubline.platform.database;

import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/**
 * Where a database answers and the secret its two roles' passwords derive from.
 *
 * @param host host name
 * @param port port
 * @param secret see {@link DatabaseRoles#password}
 */
public record DatabaseAddress(String host, int port, String secret) {

    private String url() {
        return "jdbc:postgresql://" + host + ":" + port + "/" + DatabaseRoles.DATABASE;
    }

    /** How the server connects while it works. */
    public JdbcConnectionDetails runtime() {
        return new JdbcConnectionDetails() {
            @Override
            public String getUsername() {
                return DatabaseRoles.RUNTIME;
            }

            @Override
            public String getPassword() {
                return DatabaseRoles.password(secret, DatabaseRoles.RUNTIME);
            }

            @Override
            public String getJdbcUrl() {
                return url();
            }
        };
    }

    /** How migrations connect. */
    public FlywayConnectionDetails migrations() {
        return new FlywayConnectionDetails() {
            @Override
            public String getUsername() {
                return DatabaseRoles.OWNER;
            }

            @Override
            public String getPassword() {
                return DatabaseRoles.password(secret, DatabaseRoles.OWNER);
            }

            @Override
            public String getJdbcUrl() {
                return url();
            }
        };
    }
}
