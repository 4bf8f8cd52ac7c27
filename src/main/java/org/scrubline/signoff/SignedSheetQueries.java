package org.scrubline.signoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Part;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.Verdict;
import org.scrubline.platform.TenantScope;
import org.scrubline.rubric.Band;
import org.scrubline.signoff.SignedSheet.SignedEvent;
import org.scrubline.signoff.SignedSheet.SignedStep;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads signed sheets whole: two statements for any number of them, and two more for steps not read before. */
@Repository
class SignedSheetQueries {

    /** What to look for; each filter holds when its parameter is not null. */
    private static final String WHERE = """
            s.tenant_id = :tenant
              and (cast(:id as uuid) is null or s.id = :id)
              and (cast(:sheet as uuid) is null or s.sheet_id = :sheet)
              and (cast(:trainee as uuid) is null or s.trainee_id = :trainee)
              and (cast(:programme as uuid) is null or s.programme_id = :programme)
              and (cast(:procedure as text) is null or s.procedure_code = :procedure)
              and s.received_at <= coalesce(cast(:knownAt as timestamptz), 'infinity')
              and (:reach = 'EVERY'
                   or not exists (select 1
                                  from signed_sheet newer
                                  where newer.tenant_id = s.tenant_id
                                    and newer.sheet_id = s.sheet_id
                                    and newer.version_no > s.version_no
                                    and newer.received_at <= coalesce(cast(:knownAt as timestamptz), 'infinity')))
              and (:reach <> 'COUNTING'
                   or not exists (select 1
                                  from void_decision v
                                  where v.tenant_id = s.tenant_id
                                    and v.sheet_id = s.sheet_id
                                    and v.confirmed
                                    and v.signed_at <= coalesce(cast(:knownAt as timestamptz), 'infinity')))
            """;

    private static final String SHEETS = """
            select s.id, s.sheet_id, s.version_no, case when :text then s.content end as content, s.content_hash,
                s.signer_id, s.signer_name, s.signer_role, s.meaning, s.signed_at, s.signed_zone, s.received_at,
                case when s.version_no = 1 then s.signed_at
                     else (select f.signed_at
                           from signed_sheet f
                           where f.tenant_id = s.tenant_id
                             and f.sheet_id = s.sheet_id
                             and f.version_no = 1) end as first_signed_at,
                s.programme_id, s.site_id, s.case_id, s.case_ended_at, s.trainee_id, s.rubric_version_id,
                s.procedure_code, s.band, s.confirmed_part, s.given_supervision, s.verdict, s.late,
                m.contested, m.outcome, w.countersign_awaited
            from signed_sheet s
            %s
            where %s
            """.formatted(MarkColumns.JOIN, WHERE);
    private static final String EVENTS = """
            select e.signed_sheet_id, e.event_code, e.step_code, e.reason, e.blocking
            from signed_sheet s
            join signed_event e on e.tenant_id = s.tenant_id and e.signed_sheet_id = s.id
            where %s
            order by e.signed_sheet_id, e.ordinal
            """.formatted(WHERE);

    private static final Comparator<SignedSheet> OLDEST_CASE_FIRST = Comparator.comparing(SignedSheet::caseEndedAt)
            .thenComparing(SignedSheet::signedAt)
            .thenComparing(SignedSheet::versionNo)
            .thenComparing(sheet -> sheet.id().toString());

    private final JdbcClient jdbc;
    private final SignedStepQueries steps;

    SignedSheetQueries(JdbcClient jdbc, SignedStepQueries steps) {
        this.jdbc = jdbc;
        this.steps = steps;
    }

    /** Which versions of a sheet are looked at. */
    enum Reach {
        /** The newest, unless the sheet is void: what every number is made from. */
        COUNTING,
        /** The newest, void or not. */
        NEWEST,
        EVERY
    }

    /** Which sheets; null leaves a filter out. {@code knownAt} reads them as they were known then, null as now. */
    record Filter(
            Reach reach,
            @Nullable UUID id,
            @Nullable UUID sheet,
            @Nullable UUID trainee,
            @Nullable UUID programme,
            @Nullable String procedure,
            @Nullable Instant knownAt) {

        static Filter id(UUID record) {
            return new Filter(Reach.EVERY, record, null, null, null, null, null);
        }

        static Filter sheet(Reach reach, UUID sheet) {
            return new Filter(reach, null, sheet, null, null, null, null);
        }

        static Filter trainee(UUID trainee, @Nullable String procedure) {
            return new Filter(Reach.COUNTING, null, null, trainee, null, procedure, null);
        }

        static Filter programme(UUID programme, String procedure) {
            return new Filter(Reach.COUNTING, null, null, null, programme, procedure, null);
        }

        /** The newest version of each sheet, void or not. */
        Filter withVoid() {
            return new Filter(Reach.NEWEST, id, sheet, trainee, programme, procedure, knownAt);
        }

        Filter knownAt(Instant then) {
            return new Filter(reach, id, sheet, trainee, programme, procedure, then);
        }
    }

    /** Of whatever version. */
    Optional<SignedSheet> byId(UUID id) {
        return find(Filter.id(id)).stream().findFirst();
    }

    /** The newest version, void or not. */
    Optional<SignedSheet> newest(UUID sheet) {
        return find(Filter.sheet(Reach.NEWEST, sheet)).stream().findFirst();
    }

    /** Every version, oldest first. */
    List<SignedSheet> versions(UUID sheet) {
        return find(Filter.sheet(Reach.EVERY, sheet));
    }

    /** Oldest case first. */
    List<SignedSheet> find(Filter filter) {
        Map<UUID, List<SignedEvent>> events = events(filter);
        List<SignedSheet> found = ask(SHEETS, filter)
                .query((row, n) -> sheet(row, events.getOrDefault(row.getObject("id", UUID.class), List.of())))
                .list();
        Map<UUID, List<SignedStep>> signed =
                steps.of(found.stream().map(SignedSheet::id).toList());
        return found.stream()
                .map(sheet -> sheet.withSteps(signed.getOrDefault(sheet.id(), List.of())))
                .sorted(OLDEST_CASE_FIRST)
                .toList();
    }

    private Map<UUID, List<SignedEvent>> events(Filter filter) {
        Map<UUID, List<SignedEvent>> found = new HashMap<>();
        ask(EVENTS, filter).query(row -> {
            found.computeIfAbsent(row.getObject("signed_sheet_id", UUID.class), id -> new ArrayList<>())
                    .add(new SignedEvent(
                            row.getString("event_code"),
                            row.getString("step_code"),
                            row.getString("reason"),
                            row.getBoolean("blocking")));
        });
        return found;
    }

    private JdbcClient.StatementSpec ask(String sql, Filter filter) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("reach", filter.reach().name())
                .param("text", filter.programme() == null)
                .param(
                        "knownAt",
                        filter.knownAt() == null ? null : filter.knownAt().atOffset(ZoneOffset.UTC))
                .param("id", filter.id())
                .param("sheet", filter.sheet())
                .param("trainee", filter.trainee())
                .param("programme", filter.programme())
                .param("procedure", filter.procedure());
    }

    /** Without its steps. */
    private static SignedSheet sheet(ResultSet row, List<SignedEvent> events) throws SQLException {
        return new SignedSheet(
                row.getObject("id", UUID.class),
                row.getObject("sheet_id", UUID.class),
                row.getInt("version_no"),
                row.getString("content"),
                row.getString("content_hash"),
                row.getObject("signer_id", UUID.class),
                row.getString("signer_name"),
                row.getString("signer_role"),
                row.getString("meaning"),
                instant(row, "signed_at"),
                ZoneId.of(row.getString("signed_zone")),
                instant(row, "received_at"),
                instant(row, "first_signed_at"),
                row.getObject("programme_id", UUID.class),
                row.getObject("site_id", UUID.class),
                row.getObject("case_id", UUID.class),
                instant(row, "case_ended_at"),
                row.getObject("trainee_id", UUID.class),
                row.getObject("rubric_version_id", UUID.class),
                row.getString("procedure_code"),
                Band.valueOf(row.getString("band")),
                Part.valueOf(row.getString("confirmed_part")),
                Supervision.valueOf(row.getString("given_supervision")),
                Verdict.valueOf(row.getString("verdict")),
                row.getBoolean("late"),
                MarkColumns.read(row),
                List.of(),
                events);
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
