package org.scrubline.rubric.change;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class EffectStore {

    private static final String OF_PROCEDURE = """
            select id, procedure_code, rubric_version_id, review_id, effective_from, zone, reason,
                decided_by, decided_name, decided_at
            from rubric_effect
            where tenant_id = :tenant
              and procedure_code = :procedure
            order by effective_from desc, decided_at desc
            """;
    private static final String INSERT = """
            insert into rubric_effect (
                tenant_id, id, procedure_code, rubric_version_id, review_id, effective_from, zone, reason,
                decided_by, decided_name, decided_at)
            values (:tenant, :id, :procedure, :version, :review, :from, :zone, :reason, :by, :name, :at)
            """;

    private final JdbcClient jdbc;

    EffectStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What takes effect last comes first. */
    List<RubricEffect> of(String procedure) {
        return jdbc.sql(OF_PROCEDURE)
                .param("tenant", TenantScope.require())
                .param("procedure", procedure)
                .query((row, n) -> new RubricEffect(
                        row.getObject("id", UUID.class),
                        row.getString("procedure_code"),
                        row.getObject("rubric_version_id", UUID.class),
                        row.getObject("review_id", UUID.class),
                        row.getObject("effective_from", OffsetDateTime.class).toInstant(),
                        row.getString("zone"),
                        row.getString("reason"),
                        row.getObject("decided_by", UUID.class),
                        row.getString("decided_name"),
                        row.getObject("decided_at", OffsetDateTime.class).toInstant()))
                .list();
    }

    void insert(RubricEffect effect) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", effect.id())
                .param("procedure", effect.procedure())
                .param("version", effect.version())
                .param("review", effect.review())
                .param("from", effect.effectiveFrom().atOffset(ZoneOffset.UTC))
                .param("zone", effect.zone())
                .param("reason", effect.reason())
                .param("by", effect.decidedBy())
                .param("name", effect.decidedName())
                .param("at", effect.decidedAt().atOffset(ZoneOffset.UTC))
                .update();
    }
}
