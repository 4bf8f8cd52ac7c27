package org.scrubline.casework.reference;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.scrubline.rubric.Band;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class ReferenceStore {

    private static final String CASES = """
            select id, programme_id, reference, title, rubric_version_id, band, film, closes_on, closed_at
            from reference_case
            where tenant_id = :tenant
            """;
    private static final String OF_PROGRAMME = CASES + """
              and programme_id = :programme
            order by added_at desc, reference desc
            """;
    private static final String ONE = CASES + """
              and id = :id
            """;
    // Nobody closes the case before this transaction ends.
    private static final String HELD = ONE + """
            for share
            """;
    private static final String INSERT = """
            insert into reference_case (
                tenant_id, id, programme_id, reference, title, rubric_version_id, band, film, closes_on, added_by, added_at)
            values (:tenant, :id, :programme, :reference, :title, :rubric, :band, :film, :closes, :by, :at)
            on conflict (tenant_id, programme_id, reference) do nothing
            """;
    private static final String CLOSE = """
            update reference_case
            set closed_by = :by, closed_at = :at
            where tenant_id = :tenant
              and id = :id
              and closed_at is null
            """;
    private static final String SCORINGS = """
            select s.id, s.reference_case_id, s.scorer_id, s.scorer_name, s.scored_at, t.step_code, t.level
            from reference_scoring s
            join reference_case c on c.tenant_id = s.tenant_id and c.id = s.reference_case_id
            join reference_step t on t.tenant_id = s.tenant_id and t.reference_scoring_id = s.id
            where s.tenant_id = :tenant
              and c.programme_id = :programme
            order by s.scorer_name, s.id, t.step_code
            """;
    private static final String SCORE = """
            insert into reference_scoring (tenant_id, id, reference_case_id, scorer_id, scorer_name, scored_at)
            values (:tenant, :id, :case, :scorer, :name, :at)
            on conflict (tenant_id, reference_case_id, scorer_id) do nothing
            """;
    private static final String STEP = """
            insert into reference_step (tenant_id, reference_scoring_id, step_code, level)
            values (:tenant, :scoring, :step, :level)
            """;

    private final JdbcClient jdbc;

    ReferenceStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Newest first. */
    List<ReferenceCase> of(UUID programme) {
        return jdbc.sql(OF_PROGRAMME)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .query((row, n) -> referenceCase(row))
                .list();
    }

    Optional<ReferenceCase> find(UUID id) {
        return one(ONE, id);
    }

    /** The same, and it stays as open as it is until the transaction ends. */
    Optional<ReferenceCase> held(UUID id) {
        return one(HELD, id);
    }

    private Optional<ReferenceCase> one(String sql, UUID id) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .query((row, n) -> referenceCase(row))
                .optional();
    }

    /** False when the programme has a case of this reference. */
    boolean insert(ReferenceCase reference, UUID by, Instant at) {
        return jdbc.sql(INSERT)
                        .param("tenant", TenantScope.require())
                        .param("id", reference.id())
                        .param("programme", reference.programmeId())
                        .param("reference", reference.reference())
                        .param("title", reference.title())
                        .param("rubric", reference.rubricId())
                        .param("band", reference.band().name())
                        .param("film", reference.film())
                        .param("closes", reference.closesOn())
                        .param("by", by)
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    /** False when somebody closed it before. */
    boolean close(UUID id, UUID by, Instant at) {
        return jdbc.sql(CLOSE)
                        .param("tenant", TenantScope.require())
                        .param("id", id)
                        .param("by", by)
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    /** False when this supervisor scored the case before. */
    boolean insert(ReferenceScoring scoring) {
        int rows = jdbc.sql(SCORE)
                .param("tenant", TenantScope.require())
                .param("id", scoring.id())
                .param("case", scoring.referenceCaseId())
                .param("scorer", scoring.scorerId())
                .param("name", scoring.name())
                .param("at", scoring.at().atOffset(ZoneOffset.UTC))
                .update();
        if (rows == 1) {
            scoring.levels().forEach((step, level) -> insert(scoring.id(), step, level));
            scoring.notSeen().forEach(step -> insert(scoring.id(), step, null));
        }
        return rows == 1;
    }

    private void insert(UUID scoring, String step, @Nullable Integer level) {
        jdbc.sql(STEP)
                .param("tenant", TenantScope.require())
                .param("scoring", scoring)
                .param("step", step)
                .param("level", level)
                .update();
    }

    /** Of all reference cases of a programme, by name of the supervisor. */
    List<ReferenceScoring> scorings(UUID programme) {
        return jdbc
                .sql(SCORINGS)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .query((row, n) -> line(row))
                .list()
                .stream()
                .collect(Collectors.groupingBy(line -> line.scoring().id(), LinkedHashMap::new, Collectors.toList()))
                .values()
                .stream()
                .map(ReferenceStore::scoring)
                .toList();
    }

    /** One step, with a scoring that holds no step yet. */
    private record Line(
            ReferenceScoring scoring, String step, @Nullable Integer level) {}

    private static Line line(ResultSet row) throws SQLException {
        ReferenceScoring scoring = new ReferenceScoring(
                row.getObject("id", UUID.class),
                row.getObject("reference_case_id", UUID.class),
                row.getObject("scorer_id", UUID.class),
                row.getString("scorer_name"),
                Map.of(),
                Set.of(),
                row.getObject("scored_at", OffsetDateTime.class).toInstant());
        return new Line(scoring, row.getString("step_code"), row.getObject("level", Integer.class));
    }

    private static ReferenceScoring scoring(List<Line> lines) {
        Map<String, Integer> levels = new HashMap<>();
        Set<String> notSeen = new HashSet<>();
        for (Line line : lines) {
            Integer level = line.level();
            if (level == null) {
                notSeen.add(line.step());
            } else {
                levels.put(line.step(), level);
            }
        }
        ReferenceScoring of = lines.get(0).scoring();
        return new ReferenceScoring(of.id(), of.referenceCaseId(), of.scorerId(), of.name(), levels, notSeen, of.at());
    }

    private static ReferenceCase referenceCase(ResultSet row) throws SQLException {
        OffsetDateTime closed = row.getObject("closed_at", OffsetDateTime.class);
        return new ReferenceCase(
                row.getObject("id", UUID.class),
                row.getObject("programme_id", UUID.class),
                row.getString("reference"),
                row.getString("title"),
                row.getObject("rubric_version_id", UUID.class),
                Band.valueOf(row.getString("band")),
                row.getString("film"),
                row.getObject("closes_on", LocalDate.class),
                closed == null ? null : closed.toInstant());
    }
}
