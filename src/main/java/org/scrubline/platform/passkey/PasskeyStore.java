package org.scrubline.platform.passkey;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Passkeys by account. A key never changes; the server may note its use or remove it. */
@Repository
class PasskeyStore {

    private static final String SELECT = """
            select id, account_id, credential_id, public_key, algorithm, label, signature_count,
                created_at, last_used_at
            from passkey
            where %s
            order by created_at, id
            """;
    private static final String OF_ACCOUNT = SELECT.formatted("account_id = :account");
    private static final String BY_CREDENTIAL = SELECT.formatted("credential_id = :credential");
    private static final String INSERT = """
            insert into passkey (
                id, account_id, credential_id, public_key, algorithm, label, signature_count, created_at)
            values (:id, :account, :credential, :key, :algorithm, :label, :count, :at)
            on conflict do nothing
            """;
    /** Changes nothing when the counter went back, as it does once a key was copied. */
    private static final String USED = """
            update passkey
            set signature_count = :count,
                last_used_at = :at
            where id = :id
              and signature_count <= :count
            """;

    private static final String DELETE = """
            delete from passkey
            where account_id = :account
              and id = :id
            """;

    private final JdbcClient jdbc;

    PasskeyStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A stored key; {@code credentialId} and {@code publicKey} are base64url. */
    record Stored(
            UUID id,
            UUID accountId,
            String credentialId,
            String publicKey,
            long algorithm,
            String label,
            long signatureCount,
            Instant createdAt,
            @Nullable Instant lastUsedAt) {}

    List<Stored> ofAccount(UUID accountId) {
        return jdbc.sql(OF_ACCOUNT)
                .param("account", accountId)
                .query((row, n) -> stored(row))
                .list();
    }

    Optional<Stored> byCredential(String credentialId) {
        return jdbc.sql(BY_CREDENTIAL)
                .param("credential", credentialId)
                .query((row, n) -> stored(row))
                .optional();
    }

    /** False when the credential is registered already, by whomever. */
    boolean insert(Stored key) {
        return jdbc.sql(INSERT)
                        .param("id", key.id())
                        .param("account", key.accountId())
                        .param("credential", key.credentialId())
                        .param("key", key.publicKey())
                        .param("algorithm", key.algorithm())
                        .param("label", key.label())
                        .param("count", key.signatureCount())
                        .param("at", utc(key.createdAt()))
                        .update()
                == 1;
    }

    /** False when this counter is lower than one seen before. */
    boolean used(UUID id, long signatureCount, Instant at) {
        return jdbc.sql(USED)
                        .param("count", signatureCount)
                        .param("at", utc(at))
                        .param("id", id)
                        .update()
                == 1;
    }

    boolean delete(UUID accountId, UUID id) {
        return jdbc.sql(DELETE).param("account", accountId).param("id", id).update() == 1;
    }

    private static Stored stored(ResultSet row) throws SQLException {
        OffsetDateTime lastUsed = row.getObject("last_used_at", OffsetDateTime.class);
        return new Stored(
                row.getObject("id", UUID.class),
                row.getObject("account_id", UUID.class),
                row.getString("credential_id"),
                row.getString("public_key"),
                row.getLong("algorithm"),
                row.getString("label"),
                row.getLong("signature_count"),
                row.getObject("created_at", OffsetDateTime.class).toInstant(),
                lastUsed == null ? null : lastUsed.toInstant());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
