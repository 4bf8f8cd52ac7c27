package org.scrubline.provision;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Tokens of directories. They say which organisation a request is for, so they are looked up outside any scope. */
@Repository
class TokenStore {

    private static final String USE = """
            update provision_token
            set last_used_at = :at
            where token_hash = :hash
              and revoked_at is null
            returning tenant_id
            """;

    private static final String INSERT = """
            insert into provision_token (id, token_hash, tenant_id, label, created_at)
            values (:id, :hash, :tenant, :label, :at)
            """;

    private static final String REVOKE = """
            update provision_token
            set revoked_at = :at
            where id = :id
              and tenant_id = :tenant
              and revoked_at is null
            returning label
            """;

    private static final String OPEN = """
            select id, label, created_at, last_used_at
            from provision_token
            where tenant_id = :tenant
              and revoked_at is null
            order by created_at, id
            """;

    private final JdbcClient jdbc;

    TokenStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<UUID> use(String hash, Instant at) {
        return jdbc.sql(USE)
                .param("hash", hash)
                .param("at", utc(at))
                .query(UUID.class)
                .optional();
    }

    void insert(UUID id, String hash, String label, Instant at) {
        jdbc.sql(INSERT)
                .param("id", id)
                .param("hash", hash)
                .param("tenant", TenantScope.require())
                .param("label", label)
                .param("at", utc(at))
                .update();
    }

    /** The label of the token that was good until now. */
    Optional<String> revoke(UUID id, Instant at) {
        return jdbc.sql(REVOKE)
                .param("id", id)
                .param("tenant", TenantScope.require())
                .param("at", utc(at))
                .query(String.class)
                .optional();
    }

    List<ProvisionTokens.Token> open() {
        return jdbc.sql(OPEN)
                .param("tenant", TenantScope.require())
                .query((row, n) -> new ProvisionTokens.Token(
                        row.getObject("id", UUID.class),
                        row.getString("label"),
                        row.getObject("created_at", OffsetDateTime.class).toInstant(),
                        instant(row.getObject("last_used_at", OffsetDateTime.class))))
                .list();
    }

    private static @Nullable Instant instant(@Nullable OffsetDateTime at) {
        return at == null ? null : at.toInstant();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
