package org.scrubline.outcome;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.OutcomeEntry.Absence;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.Content;
import org.scrubline.outcome.OutcomeEntry.LostReason;
import org.scrubline.outcome.OutcomeEntry.Mistake;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.outcome.OutcomeEntry.Source;

/** An entry as the columns of its row, and back. */
final class EntryColumns {

    private static final String BETWEEN = " ";

    private EntryColumns() {}

    /** Every column but the organisation. */
    static Map<String, @Nullable Object> of(OutcomeEntry entry) {
        Map<String, @Nullable Object> columns = new LinkedHashMap<>();
        columns.put("id", entry.id());
        columns.put("case_id", entry.caseId());
        columns.put("ordinal", entry.ordinal());
        columns.put("replaces", entry.replaces());
        columns.put("source", entry.source().name());
        columns.put("entered_by", entry.enteredBy());
        columns.put("entered_at", entry.enteredAt().atOffset(ZoneOffset.UTC));
        Content content = entry.content();
        Baseline baseline = content instanceof Baseline one ? one : null;
        Visit visit = content instanceof Visit one ? one : null;
        NoVisit none = content instanceof NoVisit one ? one : null;
        columns.put("kind", kind(content));
        columns.put("on_day", day(content));
        pressure(columns, baseline != null ? baseline.pressure() : visit != null ? visit.pressure() : null);
        columns.put("acuity_lines", baseline == null ? null : baseline.acuityLines());
        visit(columns, visit);
        columns.put("window_name", none == null ? null : none.window().name());
        columns.put("absence", none == null ? null : none.absence().name());
        columns.put("lost_reason", none == null ? null : name(none.why()));
        return columns;
    }

    private static String kind(Content content) {
        if (content instanceof Baseline) {
            return "BASELINE";
        }
        if (content instanceof Visit) {
            return "VISIT";
        }
        return content instanceof NoVisit ? "NO_VISIT" : "MISTAKE";
    }

    /** Null for a mistake, which has no day of its own. */
    static @Nullable LocalDate day(Content content) {
        if (content instanceof Baseline baseline) {
            return baseline.day();
        }
        if (content instanceof Visit visit) {
            return visit.day();
        }
        return content instanceof NoVisit none ? none.since() : null;
    }

    private static void pressure(Map<String, @Nullable Object> columns, @Nullable Pressure pressure) {
        columns.put("iop", pressure == null ? null : pressure.iop());
        columns.put("drops", pressure == null ? null : pressure.drops());
    }

    private static void visit(Map<String, @Nullable Object> columns, @Nullable Visit visit) {
        columns.put("chamber", visit == null ? null : name(visit.chamber()));
        columns.put("leak_test", visit == null ? null : name(visit.leakTest()));
        columns.put("bleb", visit == null ? null : name(visit.bleb()));
        columns.put("effusion", visit == null ? null : visit.effusion());
        columns.put("vision", visit == null ? null : name(visit.vision()));
        columns.put(
                "care",
                visit == null
                        ? null
                        : visit.careInOrder().stream().map(Enum::name).collect(Collectors.joining(BETWEEN)));
        columns.put("more_surgery", visit == null ? null : visit.moreSurgery());
        columns.put("light_lost", visit == null ? null : visit.lightLost());
        columns.put("seen_by", visit == null ? null : visit.seenBy().name());
    }

    private static @Nullable String name(@Nullable Enum<?> constant) {
        return constant == null ? null : constant.name();
    }

    static OutcomeEntry read(ResultSet row) throws SQLException {
        return new OutcomeEntry(
                row.getObject("id", UUID.class),
                row.getObject("case_id", UUID.class),
                row.getInt("ordinal"),
                row.getObject("replaces", Integer.class),
                content(row),
                Source.valueOf(row.getString("source")),
                row.getObject("entered_by", UUID.class),
                row.getObject("entered_at", OffsetDateTime.class).toInstant());
    }

    private static Content content(ResultSet row) throws SQLException {
        return switch (row.getString("kind")) {
            case "BASELINE" ->
                new Baseline(
                        row.getObject("on_day", LocalDate.class),
                        pressure(row),
                        row.getObject("acuity_lines", Integer.class));
            case "VISIT" -> visit(row);
            case "NO_VISIT" ->
                new NoVisit(
                        FollowUp.valueOf(row.getString("window_name")),
                        Absence.valueOf(row.getString("absence")),
                        row.getObject("on_day", LocalDate.class),
                        read(row, "lost_reason", LostReason.class));
            default -> new Mistake();
        };
    }

    private static Pressure pressure(ResultSet row) throws SQLException {
        return new Pressure(row.getDouble("iop"), row.getInt("drops"));
    }

    private static Visit visit(ResultSet row) throws SQLException {
        return new Visit(
                row.getObject("on_day", LocalDate.class),
                pressure(row),
                read(row, "chamber", Visit.Chamber.class),
                read(row, "leak_test", Visit.LeakTest.class),
                read(row, "bleb", Visit.Bleb.class),
                row.getObject("effusion", Boolean.class),
                read(row, "vision", Visit.Vision.class),
                care(row.getString("care")),
                row.getBoolean("more_surgery"),
                row.getBoolean("light_lost"),
                Visit.SeenBy.valueOf(row.getString("seen_by")));
    }

    private static Set<Visit.Care> care(String stored) {
        return Arrays.stream(stored.split(BETWEEN))
                .filter(name -> !name.isEmpty())
                .map(Visit.Care::valueOf)
                .collect(Collectors.toSet());
    }

    private static <E extends Enum<E>> @Nullable E read(ResultSet row, String column, Class<E> kind)
            throws SQLException {
        String stored = row.getString(column);
        return stored == null ? null : Enum.valueOf(kind, stored);
    }
}
