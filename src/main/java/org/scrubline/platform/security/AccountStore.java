package org.scrubline.platform.security;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class AccountStore {

    private static final String BY_USERNAME = """
            select a.id, a.username, a.password_hash, a.enabled, o.tenant_id
            from login_account a
            join account_organisation o on o.account_id = a.id
            where lower(a.username) = lower(:username)
            order by o.tenant_id
            limit 1
            """;
    private static final String BY_ID = """
            select id, username, password_hash, enabled, shared
            from login_account
            where id = :id
            """;
    private static final String INSERT = """
            insert into login_account (id, username, shared, created_at)
            values (:id, :username, :shared, :at)
            on conflict do nothing
            """;
    private static final String INSERT_ORGANISATION = """
            insert into account_organisation (account_id, tenant_id)
            values (:id, :tenant)
            """;
    private static final String SET_PASSWORD = """
            update login_account
            set password_hash = :hash
            where id = :id
            """;
    private static final String INSERT_INVITATION = """
            insert into login_invitation (code_hash, account_id, created_at, expires_at)
            values (:hash, :account, :at, :expires)
            """;
    private static final String INVITED = """
            select a.username
            from login_invitation i
            join login_account a on a.id = i.account_id
            where i.code_hash = :hash
              and i.used_at is null
              and i.expires_at > :at
            """;

    private static final String USE_INVITATION = """
            update login_invitation
            set used_at = :at
            where code_hash = :hash
              and used_at is null
              and expires_at > :at
            returning account_id
            """;

    private final JdbcClient jdbc;

    AccountStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** An account without the organisation it enters. */
    record Account(UUID id, String username, @Nullable String passwordHash, boolean enabled, boolean shared) {}

    boolean none() {
        return !jdbc.sql("select exists (select 1 from login_account)")
                .query(Boolean.class)
                .single();
    }

    Optional<AccountPrincipal> byUsername(String username) {
        return jdbc.sql(BY_USERNAME)
                .param("username", username)
                .query((row, n) -> new AccountPrincipal(
                        row.getObject("id", UUID.class),
                        row.getObject("tenant_id", UUID.class),
                        row.getString("username"),
                        row.getString("password_hash"),
                        row.getBoolean("enabled")))
                .optional();
    }

    Optional<Account> byId(UUID id) {
        return jdbc.sql(BY_ID)
                .param("id", id)
                .query((row, n) -> new Account(
                        row.getObject("id", UUID.class),
                        row.getString("username"),
                        row.getString("password_hash"),
                        row.getBoolean("enabled"),
                        row.getBoolean("shared")))
                .optional();
    }

    /** False when the name is taken. */
    boolean insert(Account account, UUID tenantId, Instant at) {
        int rows = jdbc.sql(INSERT)
                .param("id", account.id())
                .param("username", account.username())
                .param("shared", account.shared())
                .param("at", utc(at))
                .update();
        if (rows == 1) {
            jdbc.sql(INSERT_ORGANISATION)
                    .param("id", account.id())
                    .param("tenant", tenantId)
                    .update();
        }
        return rows == 1;
    }

    void setPassword(UUID id, String hash) {
        jdbc.sql(SET_PASSWORD).param("hash", hash).param("id", id).update();
    }

    void insertInvitation(String codeHash, UUID account, Instant at, Instant expires) {
        jdbc.sql(INSERT_INVITATION)
                .param("hash", codeHash)
                .param("account", account)
                .param("at", utc(at))
                .param("expires", utc(expires))
                .update();
    }

    /** The log-in name of a code that is still good and stays so. */
    Optional<String> invited(String codeHash, Instant at) {
        return jdbc.sql(INVITED)
                .param("hash", codeHash)
                .param("at", utc(at))
                .query(String.class)
                .optional();
    }

    /** The account of a code that was still good; it is used up by this call. */
    Optional<UUID> useInvitation(String codeHash, Instant at) {
        return jdbc.sql(USE_INVITATION)
                .param("at", utc(at))
                .param("hash", codeHash)
                .query(UUID.class)
                .optional();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
