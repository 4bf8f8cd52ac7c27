package org.scrubline.platform.security;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Where the owners of accounts read mail about them. */
@Repository
class AddressStore {

    /** An account of several organisations is the first one’s, so that one mail goes out; one without a password has none to forget. */
    private static final String SERVING = """
            select a.id, a.username, d.address
            from login_address d
            join login_account a on a.id = d.account_id
            join account_organisation o on o.account_id = a.id
            where o.tenant_id = :tenant
              and d.confirmed
              and a.enabled
              and not a.shared
              and a.password_hash is not null
              and not exists (select 1
                              from account_organisation other
                              where other.account_id = a.id
                                and other.tenant_id < o.tenant_id)
            order by a.id
            """;

    private static final String OF = """
            select address
            from login_address
            where account_id = :account
              and confirmed = :confirmed
            """;
    private static final String WAIT = """
            insert into login_address (account_id, confirmed, address, set_at)
            values (:account, false, :address, :at)
            on conflict (account_id, confirmed) do update
            set address = excluded.address,
                set_at = excluded.set_at,
                code_hash = null,
                code_until = null
            """;
    private static final String CODE = """
            update login_address
            set code_hash = :hash,
                code_until = :until
            where account_id = :account
              and not confirmed
            returning address
            """;
    private static final String CONFIRM = """
            with waiting as (
                delete from login_address
                where account_id = :account
                  and not confirmed
                  and code_hash = :hash
                  and code_until > :at
                returning address)
            insert into login_address (account_id, confirmed, address, set_at)
            select :account, true, address, :at
            from waiting
            on conflict (account_id, confirmed) do update
            set address = excluded.address,
                set_at = excluded.set_at
            """;
    private static final String REMOVE = """
            delete from login_address
            where account_id = :account
            """;

    private final JdbcClient jdbc;

    AddressStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** An account that can be opened again by mail. */
    record Serving(UUID account, String username, String address) {}

    /** All of the organisation of this scope. */
    List<Serving> serving() {
        return jdbc.sql(SERVING)
                .param("tenant", TenantScope.require())
                .query((row, n) -> serving(row))
                .list();
    }

    private static Serving serving(ResultSet row) throws SQLException {
        return new Serving(row.getObject("id", UUID.class), row.getString("username"), row.getString("address"));
    }

    /** The address that serves, or the one that waits to be confirmed. */
    Optional<String> of(UUID account, boolean confirmed) {
        return on(OF, account).param("confirmed", confirmed).query(String.class).optional();
    }

    void await(UUID account, String address, Instant at) {
        on(WAIT, account).param("address", address).param("at", utc(at)).update();
    }

    /** Gives the address that waits, whose code this is now. */
    Optional<String> putCode(UUID account, String codeHash, Instant until) {
        return on(CODE, account)
                .param("hash", codeHash)
                .param("until", utc(until))
                .query(String.class)
                .optional();
    }

    /** False when the code is not that of the waiting address, or has run out. */
    boolean confirm(UUID account, String codeHash, Instant at) {
        return on(CONFIRM, account).param("hash", codeHash).param("at", utc(at)).update() == 1;
    }

    /** Both; false when there was none. */
    boolean remove(UUID account) {
        return on(REMOVE, account).update() > 0;
    }

    private JdbcClient.StatementSpec on(String sql, UUID account) {
        return jdbc.sql(sql).param("account", account);
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
