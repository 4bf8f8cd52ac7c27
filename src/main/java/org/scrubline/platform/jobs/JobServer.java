package org.scrubline.platform.jobs;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.jdbc.PostgreSqlJdbcCustomization;
import com.github.kagkarlsson.scheduler.logging.LogLevel;
import java.time.Clock;
import java.time.Duration;
import java.util.UUID;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;

/** Starts due jobs as long as the server runs. Starts after everything else and stops first. */
@Component
@ConditionalOnProperty("scrubline.jobs.enabled")
class JobServer implements SmartLifecycle {

    private static final int THREADS = 2;
    private static final Duration HEARTBEAT = Duration.ofSeconds(30);
    /** A running job may finish when the server stops; less than the patience of the whole stop. */
    private static final Duration LAST_ORDERS = Duration.ofSeconds(12);

    private final DataSource database;
    private final JobTasks tasks;
    private final Clock clock;
    private final Duration poll;
    private @Nullable Scheduler scheduler;

    JobServer(DataSource database, JobTasks tasks, Clock clock, @Value("${scrubline.jobs.poll}") Duration poll) {
        this.database = database;
        this.tasks = tasks;
        this.clock = clock;
        this.poll = poll;
    }

    @Override
    public void start() {
        Scheduler starting = Scheduler.create(database, tasks.queued())
                .startTasks(tasks.recurring())
                .threads(THREADS)
                .pollingInterval(poll)
                .heartbeatInterval(HEARTBEAT)
                .shutdownMaxWait(LAST_ORDERS)
                .clock(clock::instant)
                .schedulerName(new SchedulerName.Fixed("scrubline-" + UUID.randomUUID()))
                .jdbcCustomization(new PostgreSqlJdbcCustomization(false, false))
                .failureLogging(LogLevel.WARN, false)
                .build();
        starting.start();
        scheduler = starting;
    }

    @Override
    public void stop() {
        if (scheduler != null) {
            scheduler.stop();
            scheduler = null;
        }
    }

    @Override
    public boolean isRunning() {
        return scheduler != null;
    }
}
