package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads who has to do with the versions of a sheet. */
@Repository
class VersionQueries {

    private static final String AUTHORITY = """
            select person_id, basis, granted_by
            from (
                select s.scorer_id as person_id, 'SCORER' as basis, cast(null as uuid) as granted_by,
                    cast('-infinity' as timestamptz) as since
                from score_sheet s
                where s.tenant_id = :tenant
                  and s.id = :sheet
                union all
                select e.signer_id, 'CONTEST_UPHELD', e.id, e.signed_at
                from contest c
                join contest_step e on e.tenant_id = c.tenant_id and e.contest_id = c.id
                where c.tenant_id = :tenant
                  and c.sheet_id = :sheet
                  and e.kind = 'CONTEST_UPHELD'
                union all
                select d.delegate_id, 'DELEGATED', d.id, d.signed_at
                from version_delegate d
                where d.tenant_id = :tenant
                  and d.sheet_id = :sheet) given
            order by since desc, granted_by
            limit 1
            """;
    /** Scorers of any version, the reviewer named last or who decided, and delegates. */
    private static final String INVOLVED = """
            select exists (
                    select 1
                    from signed_sheet s
                    where s.tenant_id = :tenant
                      and s.sheet_id = :sheet
                      and s.signer_id = :person)
                or exists (
                    select 1
                    from contest c
                    join contest_step e on e.tenant_id = c.tenant_id and e.contest_id = c.id
                    where c.tenant_id = :tenant
                      and c.sheet_id = :sheet
                      and ((e.kind in ('CONTEST_UPHELD', 'CONTEST_NOT_UPHELD') and e.signer_id = :person)
                           or (e.reviewer_id = :person
                               and not exists (select 1
                                               from contest_step later
                                               where later.tenant_id = e.tenant_id
                                                 and later.contest_id = e.contest_id
                                                 and later.kind = 'REVIEWER_NAMED'
                                                 and later.ordinal > e.ordinal))))
                or exists (
                    select 1
                    from version_delegate d
                    where d.tenant_id = :tenant
                      and d.sheet_id = :sheet
                      and d.delegate_id = :person)
            """;

    private final JdbcClient jdbc;

    VersionQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    VersionAuthority authority(UUID sheet) {
        return jdbc.sql(AUTHORITY)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .query((row, n) -> new VersionAuthority(
                        row.getObject("person_id", UUID.class),
                        VersionBasis.valueOf(row.getString("basis")),
                        row.getObject("granted_by", UUID.class)))
                .single();
    }

    /** Whether this person has a part in a sheet that lets them read it. */
    boolean involved(UUID person, UUID sheet) {
        return jdbc.sql(INVOLVED)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .param("person", person)
                .query(Boolean.class)
                .single();
    }
}
