package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class SigningStatementStore {

    private static final String ACCEPTED = """
            select exists (
                select 1
                from signing_statement
                where tenant_id = :tenant
                  and person_id = :person
                  and version_no = :version)
            """;
    private static final String INSERT = """
            insert into signing_statement (
                tenant_id, id, person_id, version_no, statement, printed_name, accepted_at)
            values (:tenant, :id, :person, :version, :statement, :name, :at)
            on conflict (tenant_id, person_id, version_no) do nothing
            """;

    private final JdbcClient jdbc;

    SigningStatementStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    boolean accepted(UUID person, int version) {
        return jdbc.sql(ACCEPTED)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .param("version", version)
                .query(Boolean.class)
                .single();
    }

    /** The id of the new row; empty when this version was accepted before. */
    Optional<UUID> insert(SignedIn who, int version, String statement, Instant at) {
        UUID id = UUID.randomUUID();
        int rows = jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("person", who.personId())
                .param("version", version)
                .param("statement", statement)
                .param("name", who.printedName())
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
        return rows == 1 ? Optional.of(id) : Optional.empty();
    }
}
