package org.scrubline.people;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class ExposurePlanStore {

    private static final String NEWEST = """
            select distinct on (family) family, cases
            from exposure_plan
            where tenant_id = :tenant
              and programme_id = :programme
            order by family, planned_at desc, id
            """;
    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('exposure plan ' || :programme, 0))
            """;
    private static final String INSERT = """
            insert into exposure_plan (tenant_id, id, programme_id, family, cases, planned_by, planned_at)
            values (:tenant, :id, :programme, :family, :cases, :by, :at)
            """;

    private final JdbcClient jdbc;

    ExposurePlanStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    ExposurePlan newest(UUID programme) {
        Map<String, List<Integer>> cases = new HashMap<>();
        jdbc.sql(NEWEST)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .query(row -> {
                    cases.put(row.getString("family"), numbers(row.getString("cases")));
                });
        return new ExposurePlan(cases);
    }

    /** One change of a programme's plan at a time. */
    void lock(UUID programme) {
        jdbc.sql(LOCK)
                .param("programme", programme.toString())
                .query((row, n) -> true)
                .single();
    }

    /** Gives the id of the new row. */
    UUID insert(UUID programme, String family, List<Integer> cases, UUID by, Instant at) {
        UUID id = UUID.randomUUID();
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("programme", programme)
                .param("family", family)
                .param("cases", text(cases))
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
        return id;
    }

    /** Twelve numbers with commas between them. */
    static String text(List<Integer> cases) {
        return cases.stream().map(String::valueOf).collect(Collectors.joining(","));
    }

    private static List<Integer> numbers(String text) {
        return Stream.of(text.split(",")).map(Integer::valueOf).toList();
    }
}
