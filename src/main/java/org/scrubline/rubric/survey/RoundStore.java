package org.scrubline.rubric.survey;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.scrubline.rubric.Rubric;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Rounds, their experts and answers; all of it is added once. */
@Repository
class RoundStore {

    private static final String ALL = """
            select o.id, o.content, o.content_hash, o.keep_percent, o.opened_name, o.opened_at, o.closes_at, o.zone,
                array(select e.person_id from rubric_expert e
                      where e.tenant_id = o.tenant_id and e.round_id = o.id) as experts,
                array(select r.expert_id from rubric_rating r
                      where r.tenant_id = o.tenant_id and r.round_id = o.id) as answered
            from rubric_round o
            where o.tenant_id = :tenant
            order by o.opened_at desc, o.id
            """;
    private static final String INSERT = """
            insert into rubric_round (
                tenant_id, id, content, content_hash, keep_percent, opened_by, opened_name, opened_at, closes_at, zone)
            values (:tenant, :id, :content, :hash, :keep, :by, :name, :at, :closes, :zone)
            """;
    private static final String INSERT_EXPERT = """
            insert into rubric_expert (tenant_id, round_id, person_id)
            values (:tenant, :round, :person)
            """;
    private static final String INSERT_RATING = """
            insert into rubric_rating (tenant_id, id, round_id, expert_id, rated_at)
            values (:tenant, :id, :round, :expert, :at)
            on conflict (tenant_id, round_id, expert_id) do nothing
            """;
    private static final String INSERT_STEP = """
            insert into rubric_step_rating (tenant_id, rating_id, step_code, relevance, remark)
            values (:tenant, :rating, :step, :relevance, :remark)
            """;
    private static final String RATINGS = """
            select r.id, s.step_code, s.relevance, s.remark
            from rubric_rating r
            join rubric_step_rating s on s.tenant_id = r.tenant_id and s.rating_id = r.id
            where r.tenant_id = :tenant
              and r.round_id = :round
            order by r.id, s.step_code
            """;

    private final JdbcClient jdbc;

    RoundStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Newest first. */
    List<ExpertRound> all() {
        return jdbc.sql(ALL)
                .param("tenant", TenantScope.require())
                .query((row, n) -> round(row))
                .list();
    }

    void insert(ExpertRound round, SignedIn by) {
        String content = CanonicalJson.of(round.rubric());
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", round.id())
                .param("content", content)
                .param("hash", CanonicalJson.sha256(content))
                .param("keep", round.keepPercent())
                .param("by", by.personId())
                .param("name", round.openedName())
                .param("at", round.openedAt().atOffset(ZoneOffset.UTC))
                .param("closes", round.closesAt().atOffset(ZoneOffset.UTC))
                .param("zone", round.zone().getId())
                .update();
        round.experts()
                .forEach(expert -> jdbc.sql(INSERT_EXPERT)
                        .param("tenant", TenantScope.require())
                        .param("round", round.id())
                        .param("person", expert)
                        .update());
    }

    /** False when this expert answered before. */
    boolean insert(UUID id, UUID round, UUID expert, OffsetDateTime at, List<StepRating> steps) {
        int added = jdbc.sql(INSERT_RATING)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("round", round)
                .param("expert", expert)
                .param("at", at)
                .update();
        if (added == 1) {
            steps.forEach(step -> insert(id, step));
        }
        return added == 1;
    }

    private void insert(UUID rating, StepRating step) {
        jdbc.sql(INSERT_STEP)
                .param("tenant", TenantScope.require())
                .param("rating", rating)
                .param("step", step.step())
                .param("relevance", step.relevance())
                .param("remark", step.remark())
                .update();
    }

    /** One list an expert. */
    List<List<StepRating>> ratings(UUID round) {
        Map<UUID, List<StepRating>> byExpert = new LinkedHashMap<>();
        jdbc.sql(RATINGS)
                .param("tenant", TenantScope.require())
                .param("round", round)
                .query(row -> {
                    byExpert.computeIfAbsent(row.getObject("id", UUID.class), id -> new ArrayList<>())
                            .add(new StepRating(
                                    row.getString("step_code"), row.getInt("relevance"), row.getString("remark")));
                });
        return List.copyOf(byExpert.values());
    }

    private static ExpertRound round(ResultSet row) throws SQLException {
        String content = row.getString("content");
        if (!CanonicalJson.sha256(content).equals(row.getString("content_hash"))) {
            throw new IllegalStateException("An expert round does not have its hash");
        }
        return new ExpertRound(
                row.getObject("id", UUID.class),
                CanonicalJson.read(content, Rubric.class),
                row.getInt("keep_percent"),
                row.getString("opened_name"),
                row.getObject("opened_at", OffsetDateTime.class).toInstant(),
                row.getObject("closes_at", OffsetDateTime.class).toInstant(),
                ZoneId.of(row.getString("zone")),
                ids(row.getArray("experts")),
                ids(row.getArray("answered")));
    }

    private static Set<UUID> ids(Array array) throws SQLException {
        return Arrays.stream((Object[]) array.getArray()).map(UUID.class::cast).collect(Collectors.toSet());
    }
}
