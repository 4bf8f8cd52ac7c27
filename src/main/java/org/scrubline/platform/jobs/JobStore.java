package org.scrubline.platform.jobs;

import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * Reads the job table and queues in it. Queuing is our own statement: the library's would break the caller's
 * transaction when two ask at once.
 */
@Repository
class JobStore {

    private final JdbcClient jdbc;

    JobStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Every organisation somebody can enter. */
    List<UUID> organisations() {
        return jdbc.sql("""
                        select distinct tenant_id
                        from account_organisation
                        order by tenant_id
                        """).query(UUID.class).list();
    }

    boolean queue(String job, String instance, Instant due) {
        return jdbc.sql("""
                        insert into scheduled_tasks (task_name, task_instance, execution_time, picked, version)
                        values (:job, :instance, :due, false, 1)
                        on conflict (task_name, task_instance) do nothing
                        """)
                        .param("job", job)
                        .param("instance", instance)
                        .param("due", due.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    /** The key of each is an {@link OwnedKey}, written by the database. */
    void queueEverywhere(String job, String key, Instant due) {
        jdbc.sql("""
                        insert into scheduled_tasks (task_name, task_instance, execution_time, picked, version)
                        select :job, o.tenant_id || ' ' || :key, :due, false, 1
                        from (select distinct tenant_id from account_organisation) o
                        on conflict (task_name, task_instance) do nothing
                        """)
                .param("job", job)
                .param("key", key)
                .param("due", due.atOffset(ZoneOffset.UTC))
                .update();
    }

    List<JobRun> runs() {
        return jdbc.sql("""
                        select task_name, task_instance, execution_time, picked, last_success, last_failure,
                            coalesce(consecutive_failures, 0) as failures
                        from scheduled_tasks
                        order by task_name, task_instance
                        """).query((row, n) -> run(row)).list();
    }

    private static JobRun run(ResultSet row) throws SQLException {
        String instance = row.getString("task_instance");
        return new JobRun(
                row.getString("task_name"),
                instance.equals(RecurringTask.INSTANCE) ? null : instance,
                Objects.requireNonNull(instant(row, "execution_time")),
                row.getBoolean("picked"),
                instant(row, "last_success"),
                instant(row, "last_failure"),
                row.getInt("failures"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime time = row.getObject(column, OffsetDateTime.class);
        return time == null ? null : time.toInstant();
    }
}
