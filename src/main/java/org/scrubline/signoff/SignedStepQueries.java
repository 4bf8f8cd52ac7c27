package org.scrubline.signoff;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import com.github.benmanes.caffeine.cache.Interner;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.TenantScope;
import org.scrubline.signoff.SignedSheet.SignedStep;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * Reads the steps of signed sheets and keeps those read last in memory: what was signed does not change, and the steps of
 * a whole programme took the database longer than all the rest of a page. Nothing here names anybody, and a record that is
 * gone or void is asked for no more, for which records count is read each time.
 */
@Repository
class SignedStepQueries {

    /** About 16 MB when full: 315 bytes a record of 19 steps, measured; 2 kB if each had steps of its own. */
    private static final int KEPT = 50_000;

    // The steps of a sheet packed into one text: to read a row a step took longer than all the rest of a page.
    private static final String STEPS = """
            select s.id, s.rubric_version_id,
                string_agg(t.step_code
                           || case when t.critical then '!' else ' ' end
                           || case t.state
                                  when 'SCORED' then t.level::text
                                  when 'NOT_PART' then 'N'
                                  when 'NOT_SEEN' then 'S'
                                  else left(t.cause, 1) end, ',') as steps
            from signed_sheet s
            join signed_step t on t.tenant_id = s.tenant_id and t.signed_sheet_id = s.id
            where s.tenant_id = :tenant
              and s.id = any (cast(:records as uuid[]))
            group by s.id, s.rubric_version_id
            """;
    private static final String PLACES = """
            select rubric_version_id, step_code, position
            from rubric_step
            where tenant_id = :tenant
            """;

    private final JdbcClient jdbc;
    private final Cache<Signed, List<SignedStep>> kept =
            Caffeine.newBuilder().maximumSize(KEPT).build();
    private final Interner<SignedStep> shared = Interner.newWeakInterner();

    SignedStepQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private record Signed(UUID tenant, UUID record) {}

    /** By record, in the order of the rubric; a step it does not list comes last. */
    Map<UUID, List<SignedStep>> of(Collection<UUID> records) {
        UUID tenant = TenantScope.require();
        List<Signed> wanted =
                records.stream().map(record -> new Signed(tenant, record)).toList();
        Map<UUID, List<SignedStep>> steps = new HashMap<>();
        kept.getAll(wanted, unread -> read(tenant, unread)).forEach((signed, list) -> steps.put(signed.record(), list));
        return steps;
    }

    private Map<Signed, List<SignedStep>> read(UUID tenant, Set<? extends Signed> unread) {
        PackedSteps packed = new PackedSteps(places(tenant));
        return jdbc
                .sql(STEPS)
                .param("tenant", tenant)
                .param("records", unread.stream().map(Signed::record).toArray(UUID[]::new))
                .query((row, n) -> Map.entry(
                        new Signed(tenant, row.getObject("id", UUID.class)),
                        shared(packed.read(row.getObject("rubric_version_id", UUID.class), row.getString("steps")))))
                .stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    /** Records say the same few things of a step over and over, whether read together or one by one. */
    private List<SignedStep> shared(List<SignedStep> steps) {
        return steps.stream().map(shared::intern).collect(Collectors.toUnmodifiableList());
    }

    /** Where each version of a rubric has its steps. */
    private Map<UUID, Map<String, Integer>> places(UUID tenant) {
        Map<UUID, Map<String, Integer>> places = new HashMap<>();
        jdbc.sql(PLACES).param("tenant", tenant).query(row -> {
            places.computeIfAbsent(row.getObject(1, UUID.class), version -> new HashMap<>())
                    .put(row.getString(2), row.getInt(3));
        });
        return places;
    }
}
