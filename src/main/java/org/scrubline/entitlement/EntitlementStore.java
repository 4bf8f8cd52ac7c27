package org.scrubline.entitlement;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.scrubline.rubric.Family;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Changes of entitlement, added and read. */
@Repository
class EntitlementStore {

    private static final String CHANGES = """
            select programme_id, trainee_id, family, bands, kind, level, review_on, source_id, decided_by, decided_at
            from entitlement_change
            where tenant_id = :tenant
              and programme_id = :programme
              and (cast(:trainee as uuid) is null or trainee_id = :trainee)
            order by trainee_id, ordinal
            """;
    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('entitlement ' || :trainee, 0))
            """;
    private static final String INSERT = """
            insert into entitlement_change (
                tenant_id, id, programme_id, trainee_id, ordinal, family, bands, kind, level, review_on,
                source_id, decided_by, decided_at)
            select :tenant, :id, :programme, :trainee, coalesce(max(ordinal), 0) + 1, :family, :bands, :kind, :level,
                cast(:review as date), :source, :by, :at
            from entitlement_change
            where tenant_id = :tenant
              and trainee_id = :trainee
            """;

    private final JdbcClient jdbc;

    EntitlementStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Trainee by trainee, oldest first; of everyone when no trainee is named. */
    List<EntitlementChange> changes(UUID programme, @Nullable UUID trainee) {
        return jdbc.sql(CHANGES)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .param("trainee", trainee)
                .query((row, n) -> change(row))
                .list();
    }

    /** Keeps other writers about this trainee waiting until the transaction ends. */
    void lock(UUID trainee) {
        jdbc.sql(LOCK)
                .param("trainee", trainee.toString())
                .query((row, n) -> true)
                .single();
    }

    void insert(UUID id, EntitlementChange change) {
        EntitlementLevel level = change.level();
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("programme", change.programmeId())
                .param("trainee", change.traineeId())
                .param("family", change.family().name())
                .param("bands", Bands.write(change.bands()))
                .param("kind", change.kind().name())
                .param("level", level == null ? null : level.name())
                .param("review", change.reviewOn())
                .param("source", change.source())
                .param("by", change.decidedBy())
                .param("at", change.decidedAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    private static EntitlementChange change(ResultSet row) throws SQLException {
        String level = row.getString("level");
        return new EntitlementChange(
                row.getObject("programme_id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                Family.valueOf(row.getString("family")),
                Bands.read(row.getString("bands")),
                EntitlementChange.Kind.valueOf(row.getString("kind")),
                level == null ? null : EntitlementLevel.valueOf(level),
                row.getObject("review_on", LocalDate.class),
                row.getObject("source_id", UUID.class),
                row.getObject("decided_by", UUID.class),
                row.getObject("decided_at", OffsetDateTime.class).toInstant());
    }
}
