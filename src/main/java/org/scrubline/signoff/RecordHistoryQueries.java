package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.scrubline.signoff.RecordState.Happened;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * What has happened to a sheet, for {@link RecordState}. Within a version the order is that of the states, not of the
 * clock, which may have been set back between two events.
 */
@Repository
class RecordHistoryQueries {

    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('record ' || :sheet, 0))
            """;
    private static final String EVENTS = """
            select 0 as version_no, 0 as place, 'OPENED' as event, false as countersign
            from score_sheet
            where tenant_id = :tenant
              and id = :sheet
            union all
            select 0, 1, 'LATE_RELEASED', false
            from late_release
            where tenant_id = :tenant
              and sheet_id = :sheet
            union all
            select version_no, 0, 'VERSION_OPENED', false
            from signed_sheet
            where tenant_id = :tenant
              and sheet_id = :sheet
              and version_no > 1
            union all
            select s.version_no, 1, case when s.version_no = 1 then 'SIGNED' else 'VERSION_SIGNED' end,
                exists (select 1
                        from countersign_reason r
                        where r.tenant_id = s.tenant_id
                          and r.signed_sheet_id = s.id)
            from signed_sheet s
            where s.tenant_id = :tenant
              and s.sheet_id = :sheet
            union all
            select s.version_no, case when c.event = 'COUNTERSIGNED' then 3 else 2 end, c.event, false
            from signed_sheet s
            join countersignature c on c.tenant_id = s.tenant_id and c.signed_sheet_id = s.id
            where s.tenant_id = :tenant
              and s.sheet_id = :sheet
            union all
            select s.version_no, case when a.event = 'ACKNOWLEDGED' then 5 else 4 end, a.event, false
            from signed_sheet s
            join acknowledgement a on a.tenant_id = s.tenant_id and a.signed_sheet_id = s.id
            where s.tenant_id = :tenant
              and s.sheet_id = :sheet
            order by version_no, place
            """;

    private final JdbcClient jdbc;

    RecordHistoryQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps everything else that happens to this sheet waiting until the transaction ends. */
    void lock(UUID sheet) {
        jdbc.sql(LOCK).param("sheet", sheet.toString()).query((row, n) -> true).single();
    }

    RecordState state(UUID sheet) {
        return RecordState.after(events(sheet));
    }

    private List<Happened> events(UUID sheet) {
        return jdbc.sql(EVENTS)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .query((row, n) ->
                        new Happened(RecordEvent.valueOf(row.getString("event")), row.getBoolean("countersign")))
                .list();
    }
}
