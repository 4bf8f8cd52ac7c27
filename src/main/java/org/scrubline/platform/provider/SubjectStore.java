package org.scrubline.platform.provider;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Which account belongs to whom a provider vouches for. */
@Repository
class SubjectStore {

    private static final String ACCOUNT = """
            select account_id
            from provider_subject
            where issuer = :issuer
              and subject = :subject
            """;

    private static final String INSERT = """
            insert into provider_subject (issuer, subject, account_id, linked_at)
            values (:issuer, :subject, :account, :at)
            on conflict do nothing
            """;

    private static final String LINKED_AT = """
            select linked_at
            from provider_subject
            where issuer = :issuer
              and account_id = :account
            """;

    private static final String DELETE = """
            delete from provider_subject
            where issuer = :issuer
              and account_id = :account
            """;

    private final JdbcClient jdbc;

    SubjectStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<UUID> account(ProviderIdentity shown) {
        return jdbc.sql(ACCOUNT)
                .param("issuer", shown.issuer())
                .param("subject", shown.subject())
                .query(UUID.class)
                .optional();
    }

    /** False when the subject has an account, or the account a subject of this provider. */
    boolean insert(ProviderIdentity shown, UUID account, Instant at) {
        return jdbc.sql(INSERT)
                        .param("issuer", shown.issuer())
                        .param("subject", shown.subject())
                        .param("account", account)
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    Optional<Instant> linkedAt(String issuer, UUID account) {
        return jdbc.sql(LINKED_AT)
                .param("issuer", issuer)
                .param("account", account)
                .query(OffsetDateTime.class)
                .optional()
                .map(OffsetDateTime::toInstant);
    }

    boolean delete(String issuer, UUID account) {
        return jdbc.sql(DELETE)
                        .param("issuer", issuer)
                        .param("account", account)
                        .update()
                == 1;
    }
}
