package org.scrubline.ledger;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.check.CheckResult;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Checks that were asked for. */
@Repository
class EvidenceCheckStore {

    private static final String NEWEST = """
            select asked_at, leaves, leaves_done, finished_at, result
            from ledger_check
            where tenant_id = :tenant
            order by asked_at desc, id
            limit 1
            """;
    private static final String ADD = """
            insert into ledger_check (tenant_id, id, asked_by, asked_at, leaves)
            values (:tenant, :id, :person, :at, :leaves)
            """;
    private static final String PROGRESS = """
            update ledger_check
            set leaves_done = :done
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String FINISH = """
            update ledger_check
            set leaves_done = :done, finished_at = :at, result = :result
            where tenant_id = :tenant
              and id = :id
            """;

    /** The result of an earlier release lacks numbers of this one, which are 0 then. */
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .build();

    private final JdbcClient jdbc;

    EvidenceCheckStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<AskedCheck> newest() {
        return sql(NEWEST)
                .query((row, n) -> {
                    OffsetDateTime finished = row.getObject("finished_at", OffsetDateTime.class);
                    String result = row.getString("result");
                    return new AskedCheck(
                            row.getObject("asked_at", OffsetDateTime.class).toInstant(),
                            row.getLong("leaves"),
                            row.getLong("leaves_done"),
                            finished == null ? null : finished.toInstant(),
                            result == null ? null : MAPPER.readValue(result, CheckResult.class));
                })
                .optional();
    }

    void add(UUID id, UUID person, Instant at, long leaves) {
        sql(ADD).param("id", id)
                .param("person", person)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("leaves", leaves)
                .update();
    }

    void progress(UUID id, long done) {
        sql(PROGRESS).param("id", id).param("done", done).update();
    }

    void finish(UUID id, Instant at, CheckResult result) {
        sql(FINISH)
                .param("id", id)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("done", result.leaves())
                .param("result", CanonicalJson.of(result))
                .update();
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
