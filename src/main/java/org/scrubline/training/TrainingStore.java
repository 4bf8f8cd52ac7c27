package org.scrubline.training;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Role;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class TrainingStore {

    private static final String ENTRIES = """
            select e.id, e.programme_id, e.trainee_id, e.kind, e.exercise, e.on_day, e.said,
                   e.written_by, e.written_name, e.written_role, e.written_at,
                   a.confirmed, a.said as answer, a.answered_by, a.answered_name, a.answered_at
            from training_entry e
            left join training_answer a on a.tenant_id = e.tenant_id and a.entry_id = e.id
            where e.tenant_id = :tenant
              and e.programme_id = :programme
            order by e.on_day desc, e.written_at desc, e.id
            """;
    private static final String INSERT = """
            insert into training_entry (
                tenant_id, id, programme_id, trainee_id, kind, exercise, on_day, said,
                written_by, written_name, written_role, written_at)
            values (:tenant, :id, :programme, :trainee, :kind, :exercise, :day, :said, :by, :name, :role, :at)
            """;
    private static final String ANSWER = """
            insert into training_answer (
                tenant_id, id, entry_id, confirmed, said, answered_by, answered_name, answered_role, answered_at)
            values (:tenant, :id, :entry, :confirmed, :said, :by, :name, 'SUPERVISOR', :at)
            on conflict (tenant_id, entry_id) do nothing
            """;

    private final JdbcClient jdbc;

    TrainingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of all trainees of a programme, newest day first. */
    List<TrainingEntry> of(UUID programme) {
        return jdbc.sql(ENTRIES)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .query((row, n) -> entry(row))
                .list();
    }

    void insert(TrainingEntry entry) {
        Exercise exercise = entry.exercise();
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", entry.id())
                .param("programme", entry.programmeId())
                .param("trainee", entry.traineeId())
                .param("kind", entry.kind().name())
                .param("exercise", exercise == null ? null : exercise.name())
                .param("day", entry.day())
                .param("said", entry.said())
                .param("by", entry.author().id())
                .param("name", entry.author().name())
                .param("role", entry.author().role().name())
                .param("at", entry.author().at().atOffset(ZoneOffset.UTC))
                .update();
    }

    /** False when the entry has an answer already. */
    boolean answer(UUID id, UUID entry, TrainingAnswer answer) {
        return jdbc.sql(ANSWER)
                        .param("tenant", TenantScope.require())
                        .param("id", id)
                        .param("entry", entry)
                        .param("confirmed", answer.confirmed())
                        .param("said", answer.said())
                        .param("by", answer.by())
                        .param("name", answer.name())
                        .param("at", answer.at().atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    private static TrainingEntry entry(ResultSet row) throws SQLException {
        String exercise = row.getString("exercise");
        return new TrainingEntry(
                row.getObject("id", UUID.class),
                row.getObject("programme_id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                TrainingKind.valueOf(row.getString("kind")),
                exercise == null ? null : Exercise.valueOf(exercise),
                row.getObject("on_day", LocalDate.class),
                row.getString("said"),
                new TrainingEntry.Author(
                        row.getObject("written_by", UUID.class),
                        row.getString("written_name"),
                        Role.valueOf(row.getString("written_role")),
                        instant(row, "written_at")),
                answered(row));
    }

    private static @Nullable TrainingAnswer answered(ResultSet row) throws SQLException {
        UUID by = row.getObject("answered_by", UUID.class);
        return by == null
                ? null
                : new TrainingAnswer(
                        by,
                        row.getString("answered_name"),
                        row.getBoolean("confirmed"),
                        row.getString("answer"),
                        instant(row, "answered_at"));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
