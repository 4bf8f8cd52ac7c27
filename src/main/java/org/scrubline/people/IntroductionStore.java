package org.scrubline.people;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class IntroductionStore {

    private static final String EARLIEST = """
            select person_id, min(introduced_on) as introduced_on
            from scorer_introduction
            where tenant_id = :tenant
              and programme_id = :programme
              and recorded_at <= coalesce(cast(:knownAt as timestamptz), 'infinity')
            group by person_id
            """;
    private static final String INSERT = """
            insert into scorer_introduction (
                tenant_id, id, programme_id, person_id, introduced_on, recorded_by, recorded_at)
            values (:tenant, :id, :programme, :person, :day, :by, :at)
            on conflict (tenant_id, programme_id, person_id, introduced_on) do nothing
            """;

    private final JdbcClient jdbc;

    IntroductionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** As recorded at an instant; null is now. */
    Map<UUID, LocalDate> earliest(UUID programme, @Nullable Instant knownAt) {
        Map<UUID, LocalDate> found = new HashMap<>();
        jdbc.sql(EARLIEST)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .param("knownAt", knownAt == null ? null : knownAt.atOffset(ZoneOffset.UTC))
                .query(row -> {
                    found.put(row.getObject("person_id", UUID.class), row.getObject("introduced_on", LocalDate.class));
                });
        return found;
    }

    /** The id of the new row; empty when that day was recorded before. */
    Optional<UUID> insert(UUID programme, UUID person, LocalDate day, UUID by, Instant at) {
        UUID id = UUID.randomUUID();
        int rows = jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("programme", programme)
                .param("person", person)
                .param("day", day)
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
        return rows == 1 ? Optional.of(id) : Optional.empty();
    }
}
