package org.scrubline.platform.security;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
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
    private static final String ORGANISATIONS = """
            select tenant_id
            from account_organisation
            where account_id = :account
            order by tenant_id
            """;
    private static final String CLOSE = """
            update login_account
            set enabled = false
            where id = :account
            """;
    private static final String INVITED_TO = """
            select i.account_id, o.tenant_id
            from login_invitation i
            join login_account a on a.id = i.account_id
            join account_organisation o on o.account_id = i.account_id
            where i.code_hash = :hash
              and i.used_at is null
              and i.expires_at > :at
              and a.enabled
              and a.password_hash is null
            """;
    private static final String END_INVITATIONS = """
            update login_invitation
            set expires_at = :at
            where account_id = :account
              and used_at is null
              and expires_at > :at
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

    /** An account made for an invitation, and by whom. */
    record Invited(UUID account, UUID organisation) {}

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
            enterToo(account.id(), tenantId);
        }
        return rows == 1;
    }

    /** The account may enter this organisation as well. */
    void enterToo(UUID account, UUID tenantId) {
        jdbc.sql(INSERT_ORGANISATION)
                .param("id", account)
                .param("tenant", tenantId)
                .update();
    }

    /** Where the account was ever let in; whether it still is, the organisation says. */
    List<UUID> organisations(UUID account) {
        return jdbc.sql(ORGANISATIONS)
                .param("account", account)
                .query(UUID.class)
                .list();
    }

    /** Nobody logs in with the account any more. */
    void close(UUID account) {
        jdbc.sql(CLOSE).param("account", account).update();
    }

    /** What a code that is still good, and stays so, was made for. */
    Optional<Invited> invitedTo(String codeHash, Instant at) {
        return jdbc.sql(INVITED_TO)
                .param("hash", codeHash)
                .param("at", utc(at))
                .query((row, n) ->
                        new Invited(row.getObject("account_id", UUID.class), row.getObject("tenant_id", UUID.class)))
                .optional();
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

    /** Codes of the account that are still good are so no longer. */
    void endInvitations(UUID account, Instant at) {
        jdbc.sql(END_INVITATIONS).param("account", account).param("at", utc(at)).update();
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
