package org.scrubline.ledger.check;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.sql.Connection;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.UUID;
import org.flywaydb.core.Flyway;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.platform.database.TestDatabase;

/** How long the verifier takes over many signed sheets on a real PostgreSQL, within the heap it is started with. */
public final class VerifyBenchmark {

    private static final long LIMIT_SECONDS = 60;

    private VerifyBenchmark() {}

    /** Argument: how many signed sheets. */
    public static void main(String[] args) throws Exception {
        int records = Integer.parseInt(args[0]);
        try (Connection superuser = TestDatabase.superuser()) {
            Flyway.configure()
                    .dataSource(superuser.getMetaData().getURL(), "postgres", "postgres")
                    .locations("filesystem:db/migration")
                    .placeholders(Map.of("runtimeRole", "scrubline_app"))
                    .load()
                    .migrate();
            ManyRecords many = new ManyRecords(superuser, UUID.randomUUID());
            long start = System.nanoTime();
            many.write(records);
            System.out.printf("%,d signed sheets written in %.1f s%n", records, seconds(start));
            verify(superuser, many);
        }
        System.exit(0);
    }

    private static void verify(Connection connection, ManyRecords many) throws Exception {
        connection.setAutoCommit(false);
        long start = System.nanoTime();
        long before = processorTime();
        CheckResult result = new DatabaseCheck(connection, many.tenant())
                .run(many.known(), ServiceLoader.load(RecordCheck.class), done -> {});
        double seconds = seconds(start);
        double processor = (processorTime() - before) / 1e9;
        System.out.printf(
                "verified %,d entries, %,d signed sheets, %d checkpoints: %d problems, %.1f s, of the processor %.1f s in"
                        + " this process, heap limit %d MB%n",
                result.leaves(),
                result.records(),
                result.checkpoints(),
                result.problems(),
                seconds,
                processor,
                Runtime.getRuntime().maxMemory() >> 20);
        if (!result.sound() || seconds > LIMIT_SECONDS) {
            System.out.println("NOT WITHIN THE LIMIT: " + result.found());
            System.exit(1);
        }
    }

    private static long processorTime() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }
}
