package org.scrubline.rubric.change;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Open drafts; at most one a procedure. */
@Repository
class RubricDraftStore {

    private static final String OPEN = """
            select d.id, d.procedure_code, d.source, d.lock_no, d.authors, p.printed_name, d.saved_at
            from rubric_draft d
            join person p on p.tenant_id = d.tenant_id and p.id = d.saved_by
            where d.tenant_id = :tenant
              and d.procedure_code = :procedure
              and d.ended_at is null
            """;
    private static final String INSERT = """
            insert into rubric_draft (
                tenant_id, id, procedure_code, source, lock_no, authors, begun_by, begun_at, saved_by, saved_at)
            values (:tenant, :id, :procedure, :source, 1, array[cast(:by as uuid)], :by, :at, :by, :at)
            on conflict do nothing
            """;
    private static final String SAVE = """
            update rubric_draft
            set source = :source,
                lock_no = lock_no + 1,
                authors = array_append(array_remove(authors, cast(:by as uuid)), cast(:by as uuid)),
                saved_by = :by,
                saved_at = :at
            where tenant_id = :tenant
              and id = :id
              and lock_no = :lock
              and ended_at is null
            """;
    private static final String END = """
            update rubric_draft
            set ended_at = :at
            where tenant_id = :tenant
              and id = :id
              and lock_no = :lock
              and ended_at is null
            """;

    private final JdbcClient jdbc;

    RubricDraftStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<RubricDraft> open(String procedure) {
        return jdbc.sql(OPEN)
                .param("tenant", TenantScope.require())
                .param("procedure", procedure)
                .query((row, n) -> draft(row))
                .optional();
    }

    /** Leaves a draft alone that somebody began at the same time. */
    boolean insert(String procedure, String source, UUID by, Instant at) {
        return jdbc.sql(INSERT)
                        .param("tenant", TenantScope.require())
                        .param("id", UUID.randomUUID())
                        .param("procedure", procedure)
                        .param("source", source)
                        .param("by", by)
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    /** False when it was saved or ended since it was read. */
    boolean save(RubricDraft read, String source, UUID by, Instant at) {
        return jdbc.sql(SAVE)
                        .param("tenant", TenantScope.require())
                        .param("id", read.id())
                        .param("lock", read.lockNo())
                        .param("source", source)
                        .param("by", by)
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    /** As {@link #save}. */
    boolean end(RubricDraft read, Instant at) {
        return jdbc.sql(END)
                        .param("tenant", TenantScope.require())
                        .param("id", read.id())
                        .param("lock", read.lockNo())
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    private static RubricDraft draft(ResultSet row) throws SQLException {
        Set<UUID> authors = Arrays.stream((Object[]) row.getArray("authors").getArray())
                .map(UUID.class::cast)
                .collect(Collectors.toSet());
        return new RubricDraft(
                row.getObject("id", UUID.class),
                row.getString("procedure_code"),
                row.getString("source"),
                row.getInt("lock_no"),
                authors,
                row.getString("printed_name"),
                row.getObject("saved_at", OffsetDateTime.class).toInstant());
    }
}
