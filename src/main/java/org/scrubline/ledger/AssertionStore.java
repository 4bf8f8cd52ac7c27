package org.scrubline.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Assertion;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Assertions by the record they signed. There is no statement here that changes one. */
@Repository
class AssertionStore {

    private static final String INSERT = """
            insert into signature_assertion (
                tenant_id, id, record_kind, record_id, challenge, credential_id, public_key, algorithm,
                authenticator_data, client_data, signature, rp_id, origin, made_at)
            values (
                :tenant, :id, :kind, :record, :challenge, :credential, :key, :algorithm,
                :authenticator, :client, :signature, :rp, :origin, :at)
            """;
    private static final String FIND = """
            select challenge, credential_id, public_key, algorithm,
                authenticator_data, client_data, signature, rp_id, origin
            from signature_assertion
            where tenant_id = :tenant
              and record_kind = :kind
              and record_id = :record
            """;

    private final JdbcClient jdbc;

    AssertionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What an assertion is kept under. */
    record Row(UUID id, LeafKind kind, UUID record, Instant madeAt) {}

    void insert(Row row, Assertion assertion) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", row.id())
                .param("kind", row.kind().name())
                .param("record", row.record())
                .param("challenge", assertion.challenge())
                .param("credential", assertion.credentialId())
                .param("key", assertion.publicKey())
                .param("algorithm", assertion.algorithm())
                .param("authenticator", assertion.authenticatorData())
                .param("client", assertion.clientData())
                .param("signature", assertion.signature())
                .param("rp", assertion.rpId())
                .param("origin", assertion.origin())
                .param("at", row.madeAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    Optional<Assertion> find(LeafKind kind, UUID record) {
        return jdbc.sql(FIND)
                .param("tenant", TenantScope.require())
                .param("kind", kind.name())
                .param("record", record)
                .query((row, n) -> assertion(row))
                .optional();
    }

    private static Assertion assertion(ResultSet row) throws SQLException {
        return new Assertion(
                row.getString("challenge"),
                row.getString("credential_id"),
                row.getString("public_key"),
                row.getLong("algorithm"),
                row.getString("authenticator_data"),
                row.getString("client_data"),
                row.getString("signature"),
                row.getString("rp_id"),
                row.getString("origin"));
    }
}
