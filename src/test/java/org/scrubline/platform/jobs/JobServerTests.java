package org.scrubline.platform.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.time.Clock;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.scrubline.platform.Role;
import org.scrubline.platform.TenantScope;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** The real scheduler on the real database, with jobs of the test's own. */
@ScrublineTest
@ExtendWith(OutputCaptureExtension.class)
class JobServerTests {

    private static final Duration PATIENCE = Duration.ofSeconds(30);

    @Autowired
    private DataSource database;

    @Autowired
    private JobRunner runner;

    @Autowired
    private JobQueue queue;

    @Autowired
    private JobRuns runs;

    @Autowired
    private Clock clock;

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private TransactionTemplate transaction;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private ObjectProvider<JobServer> started;

    private final String name = "test-" + UUID.randomUUID();
    private TestOrganisation one;
    private TestOrganisation two;

    @BeforeEach
    void openTwoOrganisations() {
        one = organisations.open();
        two = organisations.open();
        List.of(one, two).forEach(organisation -> organisation.join("Person", Role.TRAINEE));
    }

    @AfterEach
    void clear() {
        jdbc.sql("delete from scheduled_tasks where task_name like 'test-%'").update();
    }

    @Test
    void noJobStartsByItselfInATest() {
        assertThat(started.stream()).isEmpty();
    }

    @Test
    void aRunEntersEveryOrganisation() {
        Set<UUID> entered = ConcurrentHashMap.newKeySet();
        RecurringJob job = recurring(RecurringJob.Reach.EACH_ORGANISATION, () -> entered.add(TenantScope.require()));

        served(List.of(job), List.of(), () -> awaitOutcome(JobRun.Outcome.SUCCESS));

        assertThat(entered).contains(one.tenant(), two.tenant());
        JobRun run = theRun();
        assertThat(run.lastSuccess()).isNotNull();
        assertThat(run.lastFailure()).isNull();
        assertThat(Duration.between(clock.instant(), run.next())).isBetween(Duration.ofHours(23), Duration.ofHours(24));
    }

    @Test
    void aFailingOrganisationStopsNoOtherAndIsLoggedInOneLine(CapturedOutput output) {
        Set<UUID> entered = ConcurrentHashMap.newKeySet();
        RecurringJob job = recurring(RecurringJob.Reach.EACH_ORGANISATION, () -> {
            if (TenantScope.require().equals(one.tenant())) {
                throw new IllegalStateException("broken on purpose");
            }
            entered.add(TenantScope.require());
        });

        served(List.of(job), List.of(), () -> awaitOutcome(JobRun.Outcome.FAILURE));

        assertThat(entered).contains(two.tenant()).doesNotContain(one.tenant());
        assertThat(output.getOut().lines().filter(line -> line.contains("broken on purpose")))
                .singleElement()
                .asString()
                .contains(name, one.tenant().toString());
        assertThat(output.getOut()).doesNotContain("\tat org.scrubline");
        JobRun run = theRun();
        assertThat(run.failuresInARow()).isEqualTo(1);
        assertThat(run.lastFailure()).isNotNull();
        assertThat(run.next()).as("its next time").isAfter(clock.instant().plus(Duration.ofHours(23)));
    }

    @Test
    void aJobOfTheInstallationRunsOnceOutsideEveryOrganisation() {
        List<Boolean> scoped = new java.util.concurrent.CopyOnWriteArrayList<>();
        RecurringJob job = recurring(
                RecurringJob.Reach.INSTALLATION,
                () -> scoped.add(TenantScope.current().isPresent()));

        served(List.of(job), List.of(), () -> awaitOutcome(JobRun.Outcome.SUCCESS));

        assertThat(scoped).containsExactly(false);
    }

    @Test
    void aDailyJobWaitsForItsTime() {
        LocalTime inAnHour = LocalTime.ofInstant(clock.instant(), java.time.ZoneOffset.UTC)
                .plusHours(1)
                .withNano(0);
        RecurringJob job = new TestJob(name, JobSchedule.daily(inAnHour), RecurringJob.Reach.INSTALLATION, () -> {
            throw new AssertionError("too early");
        });

        served(List.of(job), List.of(), () -> await().atMost(PATIENCE).until(() -> !found().isEmpty()));

        assertThat(theRun().outcome()).isEqualTo(JobRun.Outcome.NONE_YET);
        assertThat(LocalTime.ofInstant(theRun().next(), java.time.ZoneOffset.UTC))
                .isEqualTo(inAnHour);
    }

    @Test
    void aQueuedJobRunsOnceWithItsKeyInTheOrganisationThatAsked() {
        List<String> ran = new java.util.concurrent.CopyOnWriteArrayList<>();
        QueuedJob job = queued(key -> ran.add(TenantScope.require() + " " + key));
        assertThat(add(one, job, "a key with spaces")).isTrue();
        assertThat(add(one, job, "a key with spaces")).as("waits already").isFalse();
        assertThat(add(two, job, "a key with spaces"))
                .as("another organisation's")
                .isTrue();

        served(List.of(), List.of(job), () -> await().atMost(PATIENCE).until(() -> found().isEmpty()));

        assertThat(ran)
                .containsExactlyInAnyOrder(one.tenant() + " a key with spaces", two.tenant() + " a key with spaces");
        assertThat(add(one, job, "a key with spaces"))
                .as("done, so it may come again")
                .isTrue();
    }

    @Test
    void whatIsQueuedInATransactionThatFailsIsNotQueued() {
        QueuedJob job = queued(key -> {});
        one.in(() -> transaction.execute(status -> {
            assertThat(queue.add(job, "undone")).isTrue();
            status.setRollbackOnly();
            return true;
        }));

        assertThat(found()).isEmpty();
    }

    @Test
    void ofTwoWhoAskAtTheSameTimeOneQueuesAndNeitherBreaks() throws Exception {
        QueuedJob job = queued(key -> {});
        CountDownLatch asked = new CountDownLatch(1);
        AtomicBoolean second = new AtomicBoolean(true);
        Thread other = new Thread(() -> {
            asked.countDown();
            second.set(add(one, job, "same"));
        });
        one.in(() -> transaction.execute(status -> {
            assertThat(queue.add(job, "same")).isTrue();
            other.start();
            return assertThat(awaitQuietly(asked)).isTrue();
        }));
        other.join(PATIENCE.toMillis());

        assertThat(second).isFalse();
        assertThat(found()).hasSize(1);
    }

    @Test
    void aQueuedJobThatFailsIsTriedAgainAMinuteLater() {
        QueuedJob job = queued(key -> {
            throw new IllegalStateException("not today");
        });
        add(one, job, "hard");

        served(List.of(), List.of(job), () -> awaitOutcome(JobRun.Outcome.FAILURE));

        JobRun run = theRun();
        assertThat(Duration.between(Objects.requireNonNull(run.lastFailure()), run.next()))
                .isEqualTo(Duration.ofMinutes(1));
        assertThat(run.key()).isEqualTo(one.tenant() + " hard");
    }

    @Test
    void stoppingLetsARunningJobFinish() {
        CountDownLatch began = new CountDownLatch(1);
        CountDownLatch stopping = new CountDownLatch(1);
        AtomicBoolean finished = new AtomicBoolean();
        QueuedJob job = queued(key -> {
            began.countDown();
            finished.set(awaitQuietly(stopping));
        });
        add(one, job, "slow");

        served(List.of(), List.of(job), () -> {
            assertThat(awaitQuietly(began)).isTrue();
            new Thread(stopping::countDown).start();
        });

        assertThat(finished).isTrue();
        assertThat(found()).isEmpty();
    }

    @Test
    void aStoppingServerBeginsNoFurtherOrganisation() {
        Set<UUID> entered = ConcurrentHashMap.newKeySet();
        RecurringJob job = recurring(RecurringJob.Reach.EACH_ORGANISATION, () -> entered.add(TenantScope.require()));

        assertThatThrownBy(() -> runner.run(job, () -> true))
                .isInstanceOf(JobUnfinished.class)
                .hasMessageContaining("0 of");
        assertThat(entered).isEmpty();
    }

    @Test
    void twoJobsOfOneNameAreRefused() {
        RecurringJob job = recurring(RecurringJob.Reach.INSTALLATION, () -> {});

        assertThatThrownBy(() -> new JobTasks(List.of(job), List.of(queued(key -> {})), runner))
                .hasMessageContaining(name);
    }

    @Test
    void aJobNeedsAPause() {
        assertThatThrownBy(() -> JobSchedule.every(Duration.ZERO)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void theTableTakesNoDataBesideTheKey() {
        assertThatThrownBy(() -> jdbc.sql("""
                        insert into scheduled_tasks (task_name, task_instance, task_data, picked, version)
                        values ('test-data', 'x', 'abc'::bytea, false, 1)
                        """).update()).hasMessageContaining("task_data");
    }

    private void served(List<RecurringJob> recurring, List<QueuedJob> queued, Runnable meanwhile) {
        JobServer server =
                new JobServer(database, new JobTasks(recurring, queued, runner), clock, Duration.ofMillis(50));
        server.start();
        try {
            meanwhile.run();
        } finally {
            server.stop();
        }
    }

    private RecurringJob recurring(RecurringJob.Reach reach, Runnable work) {
        return new TestJob(name, JobSchedule.every(Duration.ofDays(1)), reach, work);
    }

    private QueuedJob queued(Consumer<String> work) {
        return new QueuedJob() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public void run(String key) {
                work.accept(key);
            }
        };
    }

    private boolean add(TestOrganisation organisation, QueuedJob job, String key) {
        return organisation.in(() -> queue.add(job, key));
    }

    private void awaitOutcome(JobRun.Outcome outcome) {
        await().atMost(PATIENCE)
                .until(() -> found().stream().anyMatch(run -> run.outcome() == outcome && !run.running()));
    }

    private List<JobRun> found() {
        return runs.all().stream().filter(run -> run.job().equals(name)).toList();
    }

    private JobRun theRun() {
        assertThat(found()).hasSize(1);
        return found().get(0);
    }

    private static boolean awaitQuietly(CountDownLatch latch) {
        try {
            return latch.await(PATIENCE.toSeconds(), TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private record TestJob(String name, JobSchedule schedule, Reach reach, Runnable work) implements RecurringJob {
        @Override
        public void run() {
            work.run();
        }
    }
}
