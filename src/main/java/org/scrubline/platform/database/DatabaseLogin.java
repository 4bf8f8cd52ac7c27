package org.scrubline.platform.database;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/**
 * One role's way into the database.
 *
 * @param url JDBC address
 * @param user role
 * @param password its password
 */
public record DatabaseLogin(String url, String user, String password) {

    public static DatabaseLogin of(JdbcConnectionDetails details) {
        return new DatabaseLogin(
                filled(details.getJdbcUrl()), filled(details.getUsername()), filled(details.getPassword()));
    }

    static DatabaseLogin of(FlywayConnectionDetails details) {
        return new DatabaseLogin(
                filled(details.getJdbcUrl()), filled(details.getUsername()), filled(details.getPassword()));
    }

    /** A connection outside the pool; the caller closes it. */
    public Connection open() throws SQLException {
        return DriverManager.getConnection(url, user, password);
    }

    /** Never the password. */
    @Override
    public String toString() {
        return user + " at " + url;
    }

    private static String filled(@Nullable String value) {
        return value == null ? "" : value;
    }
}
