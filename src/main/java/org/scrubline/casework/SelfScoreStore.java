package org.scrubline.casework;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

@Repository
class SelfScoreStore {

    private static final String LEVELS = """
            select step_code, level
            from self_score
            where tenant_id = :tenant
              and case_id = :case
              and trainee_id = :trainee
            """;
    private static final String ALL_LEVELS = """
            select case_id, step_code, level
            from self_score
            where tenant_id = :tenant
              and trainee_id = :trainee
            """;
    private static final String STATES = """
            select state
            from score_sheet
            where tenant_id = :tenant
              and case_id = :case
              and trainee_id = :trainee
            """;
    // A sheet being signed at this moment is waited for, and its signing waits for this transaction.
    private static final String STATES_HELD = STATES + """
            for share
            """;
    private static final String FORGET = """
            delete from self_score
            where tenant_id = :tenant
              and case_id = :case
              and trainee_id = :trainee
            """;
    private static final String INSERT = """
            insert into self_score (tenant_id, case_id, trainee_id, step_code, level, recorded_at)
            select :tenant, :case, :trainee, t.step, t.level, :at
            from unnest(cast(:steps as text[]), cast(:levels as int[])) as t (step, level)
            on conflict (tenant_id, case_id, trainee_id, step_code)
                do update set level = excluded.level, recorded_at = excluded.recorded_at
            """;

    private final JdbcClient jdbc;

    SelfScoreStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Map<String, Integer> levels(UUID surgicalCase, UUID trainee) {
        record Line(String step, int level) {}
        return sql(LEVELS, surgicalCase, trainee)
                .query((row, n) -> new Line(row.getString("step_code"), row.getInt("level")))
                .stream()
                .collect(Collectors.toMap(Line::step, Line::level));
    }

    /** By case, then by step. */
    Map<UUID, Map<String, Integer>> levels(UUID trainee) {
        record Line(UUID surgicalCase, String step, int level) {}
        return jdbc
                .sql(ALL_LEVELS)
                .param("tenant", TenantScope.require())
                .param("trainee", trainee)
                .query((row, n) ->
                        new Line(row.getObject("case_id", UUID.class), row.getString("step_code"), row.getInt("level")))
                .stream()
                .collect(Collectors.groupingBy(Line::surgicalCase, Collectors.toMap(Line::step, Line::level)));
    }

    List<SheetState> sheetStates(UUID surgicalCase, UUID trainee) {
        return states(STATES, surgicalCase, trainee);
    }

    /** The same, and nobody signs one of these sheets before the transaction ends. */
    List<SheetState> sheetStatesHeld(UUID surgicalCase, UUID trainee) {
        return states(STATES_HELD, surgicalCase, trainee);
    }

    private List<SheetState> states(String text, UUID surgicalCase, UUID trainee) {
        return sql(text, surgicalCase, trainee)
                .query((row, n) -> SheetState.valueOf(row.getString("state")))
                .list();
    }

    void replace(UUID surgicalCase, UUID trainee, Map<String, Integer> levels, Instant at) {
        sql(FORGET, surgicalCase, trainee).update();
        List<Map.Entry<String, Integer>> all = List.copyOf(levels.entrySet());
        sql(INSERT, surgicalCase, trainee)
                .param("steps", all.stream().map(Map.Entry::getKey).toArray(String[]::new))
                .param("levels", all.stream().map(Map.Entry::getValue).toArray(Integer[]::new))
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    private StatementSpec sql(String text, UUID surgicalCase, UUID trainee) {
        return jdbc.sql(text)
                .param("tenant", TenantScope.require())
                .param("case", surgicalCase)
                .param("trainee", trainee);
    }
}
