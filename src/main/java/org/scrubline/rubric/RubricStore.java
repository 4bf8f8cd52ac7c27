package org.scrubline.rubric;

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

/** Published versions and their steps; the database takes no change to either. */
@Repository
class RubricStore {

    private static final String ALL = """
            select id, content_hash, published_at
            from rubric_version
            where tenant_id = :tenant
            order by procedure_code, published_at desc, version desc
            """;
    private static final String CURRENT = """
            select id, content_hash, published_at
            from rubric_version
            where tenant_id = :tenant
              and procedure_code = :procedure
            order by published_at desc, version desc
            limit 1
            """;
    private static final String BY_ID = """
            select id, content_hash, published_at
            from rubric_version
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String BY_VERSION = """
            select id, content_hash, published_at
            from rubric_version
            where tenant_id = :tenant
              and procedure_code = :procedure
              and version = :version
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
    record Version(UUID id, String contentHash, Instant publishedAt) {}

    /** By procedure code, newest first. */
    List<Version> all() {
        return jdbc.sql(ALL)
                .param("tenant", TenantScope.require())
                .query(RubricStore::version)
                .list();
    }

    Optional<Version> current(String procedure) {
        return jdbc.sql(CURRENT)
                .param("tenant", TenantScope.require())
                .param("procedure", procedure)
                .query(RubricStore::version)
                .optional();
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
                row.getObject("published_at", OffsetDateTime.class).toInstant());
    }
}
