package org.scrubline.casework;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Writes the steps, measures and events of a sheet, those that differ; {@link SheetWriterStore} has guarded its version. */
@Repository
class SheetAnswerStore {

    private static final String SET_STEPS = """
            insert into sheet_step (tenant_id, sheet_id, step_code, state, level, cause, in_bulk, recorded_at)
            select :tenant, :sheet, t.code, t.state, t.level, t.cause, t.bulk, :at
            from unnest(cast(:codes as text[]), cast(:states as text[]), cast(:levels as int[]),
                        cast(:causes as text[]), cast(:bulks as boolean[])) as t (code, state, level, cause, bulk)
            on conflict (tenant_id, sheet_id, step_code) do update
            set state = excluded.state,
                level = excluded.level,
                cause = excluded.cause,
                in_bulk = excluded.in_bulk,
                recorded_at = excluded.recorded_at
            """;
    private static final String CLEAR_STEP = """
            delete from sheet_step
            where tenant_id = :tenant
              and sheet_id = :sheet
              and step_code = :code
            """;
    private static final String SET_MEASURES = """
            insert into sheet_measure (tenant_id, sheet_id, step_code, measure_code, value, recorded_at)
            select :tenant, :sheet, t.step, t.code, t.value, :at
            from unnest(cast(:steps as text[]), cast(:codes as text[]), cast(:values as numeric[])) as t (step, code, value)
            on conflict (tenant_id, sheet_id, step_code, measure_code) do update
            set value = excluded.value,
                recorded_at = excluded.recorded_at
            """;
    private static final String CLEAR_MEASURE = """
            delete from sheet_measure
            where tenant_id = :tenant
              and sheet_id = :sheet
              and measure_code = :code
            """;
    private static final String ADD_EVENT = """
            insert into sheet_event (tenant_id, id, sheet_id, event_code, step_code, reason, action_taken, recorded_at)
            values (:tenant, :id, :sheet, :code, :step, :reason, :action, :at)
            """;
    private static final String REMOVE_EVENT = """
            delete from sheet_event
            where tenant_id = :tenant
              and sheet_id = :sheet
              and id = :id
            """;

    private final JdbcClient jdbc;

    SheetAnswerStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param stepOfMeasure step code by measure code */
    void write(Sheet before, Sheet after, Map<String, String> stepOfMeasure, Instant at) {
        writeSteps(
                after,
                either(before.steps(), after.steps())
                        .filter(code -> !before.step(code).equals(after.step(code))
                                || before.inBulk().contains(code)
                                        != after.inBulk().contains(code))
                        .toList(),
                at);
        writeMeasures(
                after,
                either(before.measures(), after.measures())
                        .filter(code -> !same(
                                before.measures().get(code), after.measures().get(code)))
                        .toList(),
                stepOfMeasure,
                at);
        writeEvents(before, after);
    }

    private void writeSteps(Sheet after, List<String> changed, Instant at) {
        List<String> set = new ArrayList<>();
        for (String code : changed) {
            if (after.step(code) instanceof StepState.Blank) {
                on(CLEAR_STEP, after.id()).param("code", code).update();
            } else {
                set.add(code);
            }
        }
        if (set.isEmpty()) {
            return;
        }
        List<StepState> states = set.stream().map(after::step).toList();
        on(SET_STEPS, after.id())
                .param("codes", set.toArray(String[]::new))
                .param("states", states.stream().map(SheetEditor::answer).toArray(String[]::new))
                .param(
                        "levels",
                        states.stream()
                                .map(state -> state instanceof StepState.Scored scored ? scored.level() : null)
                                .toArray(Integer[]::new))
                .param(
                        "causes",
                        states.stream()
                                .map(state -> state instanceof StepState.BySupervisor by
                                        ? by.cause().name()
                                        : null)
                                .toArray(String[]::new))
                .param("bulks", set.stream().map(after.inBulk()::contains).toArray(Boolean[]::new))
                .param("at", utc(at))
                .update();
    }

    private void writeMeasures(Sheet after, List<String> changed, Map<String, String> stepOfMeasure, Instant at) {
        List<String> set = new ArrayList<>();
        for (String code : changed) {
            if (after.measures().containsKey(code)) {
                set.add(code);
            } else {
                on(CLEAR_MEASURE, after.id()).param("code", code).update();
            }
        }
        if (set.isEmpty()) {
            return;
        }
        on(SET_MEASURES, after.id())
                .param("steps", set.stream().map(stepOfMeasure::get).toArray(String[]::new))
                .param("codes", set.toArray(String[]::new))
                .param("values", set.stream().map(after.measures()::get).toArray(BigDecimal[]::new))
                .param("at", utc(at))
                .update();
    }

    private void writeEvents(Sheet before, Sheet after) {
        for (RecordedEvent event : before.events()) {
            if (!after.events().contains(event)) {
                on(REMOVE_EVENT, after.id()).param("id", event.id()).update();
            }
        }
        for (RecordedEvent event : after.events()) {
            if (!before.events().contains(event)) {
                on(ADD_EVENT, after.id())
                        .param("id", event.id())
                        .param("code", event.eventCode())
                        .param("step", event.stepCode())
                        .param("reason", name(event.reason()))
                        .param("action", event.actionTaken())
                        .param("at", utc(event.recordedAt()))
                        .update();
            }
        }
    }

    private JdbcClient.StatementSpec on(String sql, UUID sheet) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("sheet", sheet);
    }

    /** Codes of the one, the other or both, each once. */
    private static Stream<String> either(Map<String, ?> before, Map<String, ?> after) {
        return Stream.concat(before.keySet().stream(), after.keySet().stream()).distinct();
    }

    private static boolean same(@Nullable BigDecimal before, @Nullable BigDecimal after) {
        if (before == null || after == null) {
            return before == null && after == null;
        }
        return before.compareTo(after) == 0;
    }

    private static @Nullable String name(@Nullable Enum<?> value) {
        return value == null ? null : value.name();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
