package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Counts signed sheets without reading them. */
@Repository
class SignedCountQueries {

    private final JdbcClient jdbc;

    SignedCountQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    SignedSheets.Count count(UUID programmeId, String procedureCode, Instant after) {
        return jdbc.sql("""
                        select count(*) as signed, count(*) filter (where s.signed_at > :after) as after
                        from signed_sheet s
                        where s.tenant_id = :tenant
                          and s.programme_id = :programme
                          and s.procedure_code = :procedure
                          and s.confirmed_part <> 'ASSISTED'
                          and not exists (select 1
                                          from signed_sheet newer
                                          where newer.tenant_id = s.tenant_id
                                            and newer.sheet_id = s.sheet_id
                                            and newer.version_no > s.version_no)
                          and not exists (select 1
                                          from void_decision v
                                          where v.tenant_id = s.tenant_id
                                            and v.sheet_id = s.sheet_id
                                            and v.confirmed)
                        """)
                .param("tenant", TenantScope.require())
                .param("programme", programmeId)
                .param("procedure", procedureCode)
                .param("after", after.atOffset(ZoneOffset.UTC))
                .query((row, n) -> new SignedSheets.Count(row.getInt("signed"), row.getInt("after")))
                .single();
    }
}
