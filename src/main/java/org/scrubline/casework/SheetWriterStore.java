package org.scrubline.casework;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Writes what differs between two versions of a sheet. Every write begins with the guard on the version it was made on. */
@Repository
class SheetWriterStore {

    private static final String ADVANCE = """
            update score_sheet
            set confirmed_part = :part,
                given_supervision = :supervision,
                strength = :strength,
                next_step = :nextStep,
                first_scored_at = :firstScored,
                touched_at = :at,
                removal_told_at = null,
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :sheet
              and state in ('OPEN', 'REOPENED')
              and lock_version = :version
            """;
    private static final String SIGN = """
            update score_sheet
            set state = 'SIGNED',
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :sheet
              and state in ('OPEN', 'REOPENED')
              and lock_version = :version
            """;
    private static final String LOCK = """
            select id
            from score_sheet
            where tenant_id = :tenant
              and id = :sheet
            for update
            """;
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
    private static final String TAP = """
            select lock_version
            from sheet_tap
            where tenant_id = :tenant
              and sheet_id = :sheet
              and tap_id = :tap
            """;
    private static final String TAPS = """
            select tap_id
            from sheet_tap
            where tenant_id = :tenant
              and sheet_id = :sheet
            order by recorded_at, lock_version
            """;

    private static final String ADD_TAP = """
            insert into sheet_tap (tenant_id, sheet_id, tap_id, lock_version, recorded_at)
            values (:tenant, :sheet, :tap, :version, :at)
            """;

    private final JdbcClient jdbc;

    SheetWriterStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Stores the difference.
     *
     * @param stepOfMeasure step code by measure code
     * @return false, with nothing written, when the sheet is no longer open on the version of {@code before}
     */
    boolean write(Sheet before, Sheet after, Map<String, String> stepOfMeasure, Instant at) {
        if (!advance(after, before.lockVersion(), at)) {
            return false;
        }
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
        return true;
    }

    boolean markSigned(UUID sheet, int version) {
        return on(SIGN, sheet).param("version", version).update() == 1;
    }

    /** Waits until no other transaction is changing the sheet, and keeps it so until this one ends. */
    void lock(UUID sheet) {
        on(LOCK, sheet).query(UUID.class).optional();
    }

    /** The version a tap made, when it was applied before. */
    Optional<Integer> tapped(UUID sheet, UUID tap) {
        return on(TAP, sheet).param("tap", tap).query(Integer.class).optional();
    }

    List<UUID> taps(UUID sheet) {
        return on(TAPS, sheet).query(UUID.class).list();
    }

    void addTap(UUID sheet, UUID tap, int version, Instant at) {
        on(ADD_TAP, sheet)
                .param("tap", tap)
                .param("version", version)
                .param("at", utc(at))
                .update();
    }

    private boolean advance(Sheet after, int version, Instant at) {
        Instant first = after.firstScoredAt();
        return on(ADVANCE, after.id())
                        .param("part", name(after.confirmedPart()))
                        .param("supervision", name(after.givenSupervision()))
                        .param("strength", after.strength())
                        .param("nextStep", after.nextStep())
                        .param("firstScored", first == null ? null : utc(first))
                        .param("at", utc(at))
                        .param("version", version)
                        .update()
                == 1;
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
