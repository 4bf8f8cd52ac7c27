package org.scrubline.platform.security;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Codes that were sent for choosing a new password. */
@Repository
class LinkStore {

    private static final String INSERT = """
            insert into login_link (code_hash, account_id, created_at, expires_at)
            values (:hash, :account, :at, :expires)
            """;
    private static final String OWNER = """
            select l.account_id, o.tenant_id
            from login_link l
            join account_organisation o on o.account_id = l.account_id
            where l.code_hash = :hash
              and l.used_at is null
              and l.expires_at > :at
            order by o.tenant_id
            limit 1
            """;
    private static final String USE = """
            update login_link
            set used_at = :at
            where code_hash = :hash
              and used_at is null
              and expires_at > :at
            """;
    private static final String END = """
            update login_link
            set used_at = :at
            where account_id = :account
              and used_at is null
            """;
    private static final String FORGET = """
            delete from login_link
            where expires_at < :before
            """;

    private final JdbcClient jdbc;

    LinkStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Whose code it is, and the organisation entered with it. */
    record Owner(UUID account, UUID tenant) {}

    void insert(String codeHash, UUID account, Instant at, Instant expires) {
        jdbc.sql(INSERT)
                .param("hash", codeHash)
                .param("account", account)
                .param("at", utc(at))
                .param("expires", utc(expires))
                .update();
    }

    /** Of a code that is still good and stays so. */
    Optional<Owner> owner(String codeHash, Instant at) {
        return jdbc.sql(OWNER)
                .param("hash", codeHash)
                .param("at", utc(at))
                .query((row, n) ->
                        new Owner(row.getObject("account_id", UUID.class), row.getObject("tenant_id", UUID.class)))
                .optional();
    }

    /** Uses a code up; of many at once, one. */
    boolean use(String codeHash, Instant at) {
        return jdbc.sql(USE).param("hash", codeHash).param("at", utc(at)).update() == 1;
    }

    /** Ends every code of an account that is still open. */
    void end(UUID account, Instant at) {
        jdbc.sql(END).param("account", account).param("at", utc(at)).update();
    }

    void forget(Instant before) {
        jdbc.sql(FORGET).param("before", utc(before)).update();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
