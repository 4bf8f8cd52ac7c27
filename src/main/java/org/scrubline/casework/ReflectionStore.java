package org.scrubline.casework;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Every statement names the author, so that no caller can read a note of another person. */
@Repository
class ReflectionStore {

    private static final String OWN = """
            select id, procedure_code, step_code, note, written_at
            from reflection
            where tenant_id = :tenant
              and author_id = :author
            order by written_at desc, id
            """;
    private static final String INSERT = """
            insert into reflection (tenant_id, id, author_id, procedure_code, step_code, note, written_at)
            values (:tenant, :id, :author, :procedure, :step, :note, :at)
            """;
    private static final String DELETE = """
            delete from reflection
            where tenant_id = :tenant
              and author_id = :author
              and id = :id
            """;

    private final JdbcClient jdbc;

    ReflectionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Reflection> of(UUID author) {
        return jdbc.sql(OWN)
                .param("tenant", TenantScope.require())
                .param("author", author)
                .query((row, n) -> new Reflection(
                        row.getObject("id", UUID.class),
                        row.getString("procedure_code"),
                        row.getString("step_code"),
                        row.getString("note"),
                        row.getObject("written_at", OffsetDateTime.class).toInstant()))
                .list();
    }

    void insert(UUID author, Reflection note) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", note.id())
                .param("author", author)
                .param("procedure", note.procedure())
                .param("step", note.step())
                .param("note", note.note())
                .param("at", note.writtenAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    /** How many rows went: one, or none when there is no such note of this author. */
    int delete(UUID author, UUID id) {
        return jdbc.sql(DELETE)
                .param("tenant", TenantScope.require())
                .param("author", author)
                .param("id", id)
                .update();
    }
}
