package org.scrubline.platform.database;

import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * The two roles of the database: the owner of the schema, who migrates, and the role the server works as, who owns
 * nothing and is held by row-level security.
 */
public final class DatabaseRoles {

    public static final String DATABASE = "scrubline";
    public static final String OWNER = "scrubline_owner";
    public static final String RUNTIME = "scrubline_app";

    private DatabaseRoles() {}

    /**
     * Creates both roles and the database where they are missing and sets their passwords.
     *
     * @param superuser connection allowed to create roles and databases; not closed
     * @param secret both passwords are derived from it
     */
    public static void ensure(Connection superuser, String secret) throws SQLException {
        ensureRole(superuser, OWNER, password(secret, OWNER));
        ensureRole(superuser, RUNTIME, password(secret, RUNTIME));
        if (!exists(superuser, "select 1 from pg_database where datname = '" + DATABASE + "'")) {
            execute(superuser, "create database " + DATABASE + " owner " + OWNER);
        }
        execute(superuser, "revoke all on database " + DATABASE + " from public");
        execute(superuser, "grant connect on database " + DATABASE + " to " + RUNTIME);
    }

    /** The password of a role: a keyed hash of the secret, so that one secret file serves all roles. */
    public static String password(String secret, String role) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(secret.getBytes(StandardCharsets.UTF_8), "HmacSHA256"));
            return HexFormat.of().formatHex(mac.doFinal(role.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException | InvalidKeyException e) {
            throw new IllegalStateException("HmacSHA256 is part of every JDK", e);
        }
    }

    private static void ensureRole(Connection superuser, String role, String password) throws SQLException {
        if (!exists(superuser, "select 1 from pg_roles where rolname = '" + role + "'")) {
            execute(superuser, "create role " + role + " login nosuperuser nocreatedb nocreaterole nobypassrls");
        }
        execute(superuser, "alter role " + role + " password '" + password + "'");
    }

    private static boolean exists(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            return rows.next();
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
