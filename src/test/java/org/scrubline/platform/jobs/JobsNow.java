package org.scrubline.platform.jobs;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Looks at the queue and runs jobs at once, where no scheduler runs. */
@TestComponent
public class JobsNow {

    private final JobRunner runner;
    private final JobRuns runs;
    private final JdbcClient jdbc;

    JobsNow(JobRunner runner, JobRuns runs, JdbcClient jdbc) {
        this.runner = runner;
        this.runs = runs;
        this.jdbc = jdbc;
    }

    /** One run as the schedule would start it: of an organisation's job, in every organisation of the test database. */
    public void run(RecurringJob job) {
        runner.run(job, () -> false);
    }

    /** Keys under which the job waits for an organisation. */
    public List<String> waiting(UUID organisation, QueuedJob job) {
        return instances(organisation, job).stream()
                .map(instance -> OwnedKey.parse(instance).key())
                .toList();
    }

    /** Runs what waits for an organisation, and takes it off the queue. */
    public void runWaiting(UUID organisation, QueuedJob job) {
        instances(organisation, job).forEach(instance -> {
            runner.run(job, instance);
            jdbc.sql("delete from scheduled_tasks where task_name = :job and task_instance = :instance")
                    .param("job", job.name())
                    .param("instance", instance)
                    .update();
        });
    }

    private List<String> instances(UUID organisation, QueuedJob job) {
        return runs.all().stream()
                .filter(run -> run.job().equals(job.name()) && run.key() != null)
                .map(run -> Objects.requireNonNull(run.key()))
                .filter(instance -> OwnedKey.parse(instance).organisation().equals(organisation))
                .toList();
    }
}
