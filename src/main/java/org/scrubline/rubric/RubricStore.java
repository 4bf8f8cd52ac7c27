package org.scrubline.rubric;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Published versions and their steps; the database takes no change to either. */
@Repository
class RubricStore {

    private static final String COLUMNS = """
             v.id, v.content_hash, v.published_at, coalesce(e.effective_from, v.published_at) as effective_from,
                coalesce(e.zone, 'Z') as zone
            from rubric_version v
            left join rubric_effect e on e.tenant_id = v.tenant_id and e.rubric_version_id = v.id
            where v.tenant_id = :tenant
            """;
    private static final String VERSIONS = "select" + COLUMNS;
    private static final String ALL = VERSIONS + """
            order by v.procedure_code, effective_from desc, v.published_at desc, v.version desc
            """;
    // A version published at once has no row of its own and is in use whatever the clock says: it may be put back.
    private static final String IN_FORCE = "select distinct on (v.procedure_code)" + COLUMNS + """
              and (cast(:procedure as text) is null or v.procedure_code = :procedure)
              and (e.effective_from is null or e.effective_from <= :now)
            order by v.procedure_code, effective_from desc, v.published_at desc, v.version desc
            """;
    private static final String BY_ID = VERSIONS + """
              and v.id = :id
            """;
    private static final String BY_VERSION = VERSIONS + """
              and v.procedure_code = :procedure
              and v.version = :version
            """;
    private static final String TAKING_CASES = """
            select procedure_code
            from (
                select distinct on (procedure_code) procedure_code, in_use
                from (
                    select v.procedure_code, coalesce(e.effective_from, v.published_at) as effective_from,
                        v.published_at as decided_at, true as in_use, e.effective_from is null as at_once
                    from rubric_version v
                    left join rubric_effect e on e.tenant_id = v.tenant_id and e.rubric_version_id = v.id
                    where v.tenant_id = :tenant
                    union all
                    select procedure_code, effective_from, decided_at, false, false
                    from rubric_effect
                    where tenant_id = :tenant
                      and rubric_version_id is null
                ) change
                where at_once or effective_from <= :now
                order by procedure_code, effective_from desc, decided_at desc
            ) newest
            where in_use
            """;
    private static final String CONTENT = """
            select content, content_hash
            from rubric_version
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String INSERT_VERSION = """
            insert into rubric_version (tenant_id, id, procedure_code, version, title, family,
                                        content, content_hash, published_at, published_by)
            values (:tenant, :id, :procedure, :version, :title, :family,
                    :content, :hash, :at, :publisher)
            on conflict (tenant_id, procedure_code, version) do nothing
            """;
    private static final String INSERT_STEP = """
            insert into rubric_step (tenant_id, rubric_version_id, step_code, position, phase, critical, name)
            values (:tenant, :rubric, :code, :position, :phase, :critical, :name)
            """;

    private final JdbcClient jdbc;

    RubricStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A version without its content. */
    record Version(UUID id, String contentHash, Instant publishedAt, Instant effectiveFrom, ZoneId zone) {}

    /** By procedure code, the one in force last first. */
    List<Version> all() {
        return jdbc.sql(ALL)
                .param("tenant", TenantScope.require())
                .query(RubricStore::version)
                .list();
    }

    /** By procedure code, of each the version in force that came into force last. */
    List<Version> inForce(Instant now) {
        return inForce(null, now).list();
    }

    Optional<Version> current(String procedure, Instant now) {
        return inForce(procedure, now).optional();
    }

    private JdbcClient.MappedQuerySpec<Version> inForce(@Nullable String procedure, Instant now) {
        return jdbc.sql(IN_FORCE)
                .param("tenant", TenantScope.require())
                .param("procedure", procedure)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .query(RubricStore::version);
    }

    Optional<Version> find(UUID id) {
        return jdbc.sql(BY_ID)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .query(RubricStore::version)
                .optional();
    }

    Optional<Version> find(String procedure, String version) {
        return jdbc.sql(BY_VERSION)
                .param("tenant", TenantScope.require())
                .param("procedure", procedure)
                .param("version", version)
                .query(RubricStore::version)
                .optional();
    }

    Set<String> takingCases(Instant now) {
        return jdbc.sql(TAKING_CASES)
                .param("tenant", TenantScope.require())
                .param("now", now.atOffset(ZoneOffset.UTC))
                .query(String.class)
                .set();
    }

    RubricContent content(UUID id) {
        return jdbc.sql(CONTENT)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .query((row, n) -> new RubricContent(row.getString("content"), row.getString("content_hash")))
                .single();
    }

    /** False when that version of the procedure exists. */
    boolean insert(PublishedRubric published, String content, UUID publisher) {
        Rubric rubric = published.rubric();
        int added = jdbc.sql(INSERT_VERSION)
                .param("tenant", TenantScope.require())
                .param("id", published.id())
                .param("procedure", rubric.procedure())
                .param("version", rubric.version())
                .param("title", rubric.title())
                .param("family", rubric.family().name())
                .param("content", content)
                .param("hash", published.contentHash())
                .param("at", published.publishedAt().atOffset(ZoneOffset.UTC))
                .param("publisher", publisher)
                .update();
        if (added == 0) {
            return false;
        }
        for (int position = 0; position < rubric.steps().size(); position++) {
            insertStep(published.id(), position, rubric.steps().get(position));
        }
        return true;
    }

    private void insertStep(UUID rubric, int position, Step step) {
        jdbc.sql(INSERT_STEP)
                .param("tenant", TenantScope.require())
                .param("rubric", rubric)
                .param("code", step.code())
                .param("position", position)
                .param("phase", step.phase().name())
                .param("critical", step.critical())
                .param("name", step.name())
                .update();
    }

    private static Version version(ResultSet row, int number) throws SQLException {
        return new Version(
                row.getObject("id", UUID.class),
                row.getString("content_hash"),
                row.getObject("published_at", OffsetDateTime.class).toInstant(),
                row.getObject("effective_from", OffsetDateTime.class).toInstant(),
                ZoneId.of(row.getString("zone")));
    }
}
