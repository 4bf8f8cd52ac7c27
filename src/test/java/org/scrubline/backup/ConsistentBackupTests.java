package org.scrubline.backup;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.backup.file.BackupReader;
import org.scrubline.backup.file.Manifest;
import org.scrubline.platform.Role;
import org.scrubline.platform.database.DatabaseLogin;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A backup taken while the server is writing. */
@ScrublineTest
class ConsistentBackupTests {

    private static final String CASE = """
            insert into surgical_case (tenant_id, id, programme_id, site_id, reference, kind, procedure_code, eye, state,
                planned_supervision, band, complexity_set_at, complexity_set_late, ended_at, ended_zone, logged_by, logged_at)
            values (:tenant, :id, :programme, :site, :reference, 'OPERATION', 'TRAB_FORNIX', 'LEFT', 'ENDED',
                'SCRUBBED', 'A', now(), false, now(), 'UTC', :person, now())
            """;
    private static final String TRAINEE = """
            insert into case_trainee (tenant_id, case_id, trainee_id, claimed_part)
            values (:tenant, :id, :person, 'WHOLE_CASE')
            """;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    JdbcConnectionDetails connection;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    @TempDir
    Path directory;

    /** case_trainee is read before surgical_case: without one moment for both, a case would be seen without its trainee. */
    @Test
    void aRowAndItsChildAreBothInTheFileOrNeither() throws Exception {
        TestOrganisation organisation = organisations.open();
        UUID trainee = organisation.join("Fenna Hallinor", Role.TRAINEE).personId();
        AtomicBoolean writing = new AtomicBoolean(true);
        ExecutorService writer = Executors.newSingleThreadExecutor();
        Future<Integer> written = writer.submit(() -> {
            int cases = 0;
            while (writing.get()) {
                write(organisation, trainee);
                cases++;
            }
            return cases;
        });
        List<Integer> seen = new ArrayList<>();
        try {
            for (int i = 0; i < 2; i++) {
                Path file = directory.resolve("during-" + i + ".backup");
                Manifest manifest =
                        new Backup(DatabaseLogin.of(connection), clock).write(file, Optional.empty(), table -> pause());
                Map<String, List<String>> ids = ids(file, organisation.tenant());
                assertThat(ids.get("surgical_case")).isEqualTo(ids.get("case_trainee"));
                assertThat(manifest.rows()).isPositive();
                seen.add(ids.get("surgical_case").size());
            }
        } finally {
            writing.set(false);
            writer.shutdown();
        }
        assertThat(seen).isSorted().doesNotHaveDuplicates();
        assertThat(written.get()).isGreaterThanOrEqualTo(seen.get(1));
    }

    private void write(TestOrganisation organisation, UUID trainee) {
        UUID id = UUID.randomUUID();
        organisation.in(() -> transaction.execute(status -> {
            jdbc.sql(CASE)
                    .param("tenant", organisation.tenant())
                    .param("id", id)
                    .param("programme", organisation.programme().id())
                    .param("site", organisation.site().id())
                    .param("reference", id.toString())
                    .param("person", trainee)
                    .update();
            return jdbc.sql(TRAINEE)
                    .param("tenant", organisation.tenant())
                    .param("id", id)
                    .param("person", trainee)
                    .update();
        }));
    }

    /** Leaves the writer time between two tables. */
    private static void pause() {
        try {
            Thread.sleep(20);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** The cases' ids, sorted, by table: the second value of each line. */
    private static Map<String, List<String>> ids(Path file, UUID tenant) throws Exception {
        Map<String, List<String>> ids = new HashMap<>();
        new BackupReader(file, Optional.empty()).rows((entry, rows) -> {
            String table = entry.split("/")[1];
            if (entry.endsWith(tenant + ".copy")
                    && List.of("surgical_case", "case_trainee").contains(table)) {
                ids.put(
                        table,
                        new String(rows.readAllBytes(), StandardCharsets.UTF_8)
                                .lines()
                                .map(line -> line.split("\t")[1])
                                .sorted()
                                .toList());
            }
        });
        return ids;
    }
}
