package org.scrubline.signoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Releases of late sheets, and the sheets that need one. */
@Repository
class LateReleaseStore {

    private static final String RELEASE = """
            select id, sheet_id, released_by, released_name, released_role, reason, released_at, released_zone,
                credential, assertion_hash
            from late_release
            where tenant_id = :tenant
              and sheet_id = :sheet
            """;
    private static final String INSERT = """
            insert into late_release (
                tenant_id, id, sheet_id, released_by, released_name, released_role, reason, released_at, released_zone,
                credential, assertion_hash)
            values (:tenant, :id, :sheet, :by, :name, :role, :reason, :at, :zone, :credential, :assertion)
            on conflict (tenant_id, sheet_id) do nothing
            """;
    private static final String CLOSED = """
            select s.id, c.programme_id, r.title, c.reference, t.printed_name as trainee, p.printed_name as scorer,
                c.ended_at, c.ended_zone
            from score_sheet s
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            join rubric_version r on r.tenant_id = s.tenant_id and r.id = s.rubric_version_id
            join person t on t.tenant_id = s.tenant_id and t.id = s.trainee_id
            join person p on p.tenant_id = s.tenant_id and p.id = s.scorer_id
            where s.tenant_id = :tenant
              and s.state = 'OPEN'
              and c.programme_id = :programme
              and c.ended_at < :before
              and not exists (select 1
                              from signed_sheet v
                              where v.tenant_id = s.tenant_id
                                and v.sheet_id = s.id)
            order by c.ended_at, s.id
            """;

    private final JdbcClient jdbc;

    LateReleaseStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<LateRelease> of(UUID sheet) {
        return jdbc.sql(RELEASE)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .query((row, n) -> release(row))
                .optional();
    }

    /** False when the sheet was released before. */
    boolean insert(LateRelease release) {
        CredentialUsed used = release.credential();
        return jdbc.sql(INSERT)
                        .param("tenant", TenantScope.require())
                        .param("id", release.id())
                        .param("sheet", release.sheetId())
                        .param("by", release.releasedBy())
                        .param("name", release.releasedName())
                        .param("role", release.releasedRole())
                        .param("reason", release.reason())
                        .param("at", release.releasedAt().atOffset(ZoneOffset.UTC))
                        .param("zone", release.releasedZone().getId())
                        .param("credential", used == null ? null : used.kind().name())
                        .param("assertion", used == null ? null : used.assertionHash())
                        .update()
                == 1;
    }

    /** Sheets never signed of cases that ended before this instant, longest ago first. */
    List<ClosedSheet> closed(UUID programme, Instant before) {
        return jdbc.sql(CLOSED)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .param("before", before.atOffset(ZoneOffset.UTC))
                .query((row, n) -> closed(row))
                .list();
    }

    private ClosedSheet closed(ResultSet row) throws SQLException {
        UUID sheet = row.getObject("id", UUID.class);
        return new ClosedSheet(
                sheet,
                row.getObject("programme_id", UUID.class),
                row.getString("title"),
                row.getString("reference"),
                row.getString("trainee"),
                row.getString("scorer"),
                row.getObject("ended_at", OffsetDateTime.class).toInstant(),
                ZoneId.of(row.getString("ended_zone")),
                of(sheet).orElse(null));
    }

    private static LateRelease release(ResultSet row) throws SQLException {
        return new LateRelease(
                row.getObject("id", UUID.class),
                row.getObject("sheet_id", UUID.class),
                row.getObject("released_by", UUID.class),
                row.getString("released_name"),
                row.getString("released_role"),
                row.getString("reason"),
                row.getObject("released_at", OffsetDateTime.class).toInstant(),
                ZoneId.of(row.getString("released_zone")),
                credential(row));
    }

    private static @Nullable CredentialUsed credential(ResultSet row) throws SQLException {
        String kind = row.getString("credential");
        return kind == null
                ? null
                : new CredentialUsed(CredentialUsed.Kind.valueOf(kind), row.getString("assertion_hash"));
    }
}
