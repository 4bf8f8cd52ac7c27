package org.scrubline.platform.jobs;

import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.ExecutionOperations;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The rooms' jobs as the library knows them. */
class JobTasks {

    private static final Duration FIRST_RETRY = Duration.ofMinutes(1);
    /** 2 to this power minutes is the longest wait below a day. */
    private static final int MOST_DOUBLINGS = 10;

    private final List<RecurringJob> recurring;
    private final List<QueuedJob> queued;
    private final JobRunner runner;

    JobTasks(List<RecurringJob> recurring, List<QueuedJob> queued, JobRunner runner) {
        this.recurring = List.copyOf(recurring);
        this.queued = List.copyOf(queued);
        this.runner = runner;
        refuseTwins();
    }

    private void refuseTwins() {
        Stream.concat(
                        recurring.stream().map(RecurringJob::name),
                        queued.stream().map(QueuedJob::name))
                .collect(Collectors.groupingBy(name -> name, Collectors.counting()))
                .forEach((name, count) -> {
                    if (count > 1) {
                        throw new IllegalStateException("two jobs are called " + name);
                    }
                });
    }

    List<RecurringTask<Void>> recurring() {
        return recurring.stream().map(this::task).toList();
    }

    private RecurringTask<Void> task(RecurringJob job) {
        return Tasks.recurring(job.name(), job.schedule().schedule())
                .execute((instance, context) -> runner.run(job, context.getSchedulerState()::isShuttingDown));
    }

    List<Task<?>> queued() {
        return queued.stream().<Task<?>>map(this::task).toList();
    }

    private Task<Void> task(QueuedJob job) {
        return Tasks.oneTime(job.name())
                .onFailure(JobTasks::tryAgain)
                .execute((instance, context) -> runner.run(job, instance.getId()));
    }

    private static void tryAgain(ExecutionComplete failed, ExecutionOperations<Void> operations) {
        int doublings = Math.min(failed.getExecution().consecutiveFailures, MOST_DOUBLINGS);
        operations.reschedule(failed, failed.getTimeDone().plus(FIRST_RETRY.multipliedBy(1L << doublings)));
    }
}
