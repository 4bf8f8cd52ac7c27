package org.scrubline.cohort.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/**
 * Server time of the pages of a large programme: 40 trainees and 5 000 cases, two in five of them of the procedure
 * shown. One case a trainee goes through the services; the others are copies of its rows.
 */
@ScrublineTest
class LargeProgrammeSoak {

    private static final int TRAINEES = 40;
    private static final int CASES = Integer.getInteger("scrubline.test.cases", 5_000);
    private static final int SCORERS = 12;

    /** Visits before those that count: until then the compiler of the JVM is still at work on the page. */
    private static final int WARM_UP = 300;

    private static final int VISITS = 400;

    /** Hashed before each visit: how evenly the machine itself works while it is measured. */
    private static final byte[] YARDSTICK = new byte[12 << 20];

    /** Every id of a copied row is made from the old one and n. */
    private static final String COPY = """
            insert into %1$s
            select (jsonb_populate_record(t, to_jsonb(t) || jsonb_build_object(%2$s))).*
            from %1$s t, generate_series(1, %3$d) n
            where t.tenant_id = '%4$s'
            """;

    private static final String PROCEDURE =
            ", 'procedure_code', case when n % 5 < 2 then t.procedure_code else 'OTHER_' || n % 3 end";
    private static final String LEVEL = ", 'level', 3 + abs(hashtext(t.signed_sheet_id::text || t.step_code || n)) % 3";

    @Autowired
    private MockMvc mvc;

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private History history;

    private SignedIn director;
    private final List<SignedIn> trainees = new ArrayList<>();

    @BeforeEach
    void writeTheProgramme() throws Exception {
        TestOrganisation organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
        List<SignedIn> scorers = new ArrayList<>();
        for (int i = 0; i < SCORERS; i++) {
            scorers.add(organisation.join("Scorer " + (char) ('A' + i), Role.SUPERVISOR));
        }
        Instant start = Instant.now().minus(Duration.ofDays(700));
        for (int i = 0; i < TRAINEES; i++) {
            SignedIn trainee =
                    organisation.join("Trainee " + (char) ('A' + i / 26) + (char) ('A' + i % 26), Role.TRAINEE);
            trainees.add(trainee);
            history.signed(
                    organisation,
                    trainee,
                    scorers.get(i % SCORERS),
                    start.plus(Duration.ofHours(i)),
                    Map.of("TF09", 3));
        }
        copy(organisation.tenant());
    }

    private static void copy(UUID tenant) throws Exception {
        Map<String, String> changed = new LinkedHashMap<>();
        changed.put(
                "surgical_case", ids("id") + PROCEDURE + ", 'reference', t.reference || '-' || n" + later("ended_at"));
        changed.put("case_trainee", ids("case_id"));
        changed.put("score_sheet", ids("id", "case_id"));
        changed.put(
                "signed_sheet",
                ids("id", "sheet_id", "case_id") + PROCEDURE + later("case_ended_at", "signed_at", "received_at"));
        changed.put("signed_step", ids("signed_sheet_id") + LEVEL);
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            statement.execute("set session_replication_role = replica");
            for (Map.Entry<String, String> table : changed.entrySet()) {
                statement.execute(COPY.formatted(table.getKey(), table.getValue(), CASES / TRAINEES - 1, tenant));
            }
            statement.execute("analyze");
        }
    }

    private static String ids(String... columns) {
        return Arrays.stream(columns)
                .map(column -> "'" + column + "', md5(t." + column + "::text || n)::uuid")
                .collect(Collectors.joining(", "));
    }

    private static String later(String... columns) {
        return Arrays.stream(columns)
                .map(column -> ", '" + column + "', t." + column + " + make_interval(days => 5 * n)")
                .collect(Collectors.joining());
    }

    @Test
    void thePagesAreThereAtOnce() throws Exception {
        double[] cohort = times("/cohort", director);
        double[] curve = times("/progress", trainees.get(0));

        assertThat(p95(cohort)).isLessThanOrEqualTo(150);
        assertThat(p95(curve)).isLessThanOrEqualTo(100);
    }

    private double[] times(String path, SignedIn who) throws Exception {
        double[] times = new double[VISITS + 1];
        double[] yardstick = new double[VISITS + 1];
        for (int i = 0; i < times.length; i++) {
            yardstick[i] = hashing();
            long start = System.nanoTime();
            int status = mvc.perform(get(path).with(LogIn.as(who)))
                    .andReturn()
                    .getResponse()
                    .getStatus();
            times[i] = (System.nanoTime() - start) / 1e6;
            assertThat(status).isEqualTo(200);
        }
        double[] warm = warm(times);
        double[] machine = warm(yardstick);
        System.out.printf(
                "%s, %d trainees, %d cases: first visit %.0f ms, warm median %.0f ms, p95 %.0f ms;"
                        + " 12 MB hashed before each: fastest %.1f ms, median %.1f ms, p95 %.1f ms%n",
                path,
                TRAINEES,
                CASES,
                times[0],
                warm[warm.length / 2],
                p95(warm),
                machine[0],
                machine[machine.length / 2],
                p95(machine));
        return warm;
    }

    private static double hashing() throws Exception {
        long start = System.nanoTime();
        MessageDigest.getInstance("SHA-256").digest(YARDSTICK);
        return (System.nanoTime() - start) / 1e6;
    }

    /** Those after the warm-up, shortest first. */
    private static double[] warm(double[] times) {
        double[] warm = Arrays.copyOfRange(times, WARM_UP + 1, times.length);
        Arrays.sort(warm);
        return warm;
    }

    private static double p95(double[] sorted) {
        return sorted[(int) Math.ceil(.95 * sorted.length) - 1];
    }
}
