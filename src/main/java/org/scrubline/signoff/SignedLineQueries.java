package org.scrubline.signoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.scrubline.casework.Verdict;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Lists of signed sheets, the newest version of each. */
@Repository
class SignedLineQueries {

    private static final String LINES = """
            select s.id, r.title, c.reference, t.printed_name, s.signer_name, s.signer_role, s.meaning,
                s.case_ended_at, s.signed_at, s.signed_zone, s.verdict, s.late,
                %s as countersign_awaited
            from signed_sheet s
            join rubric_version r on r.tenant_id = s.tenant_id and r.id = s.rubric_version_id
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            join person t on t.tenant_id = s.tenant_id and t.id = s.trainee_id
            where s.tenant_id = :tenant
              and %s
              and not exists (select 1
                              from signed_sheet newer
                              where newer.tenant_id = s.tenant_id
                                and newer.sheet_id = s.sheet_id
                                and newer.version_no > s.version_no)
            order by s.signed_at desc, s.id
            """;
    private static final String SIGNED_BY = LINES.formatted(CountersignQueries.AWAITED, "s.signer_id = :person");
    private static final String ABOUT = LINES.formatted(CountersignQueries.AWAITED, "s.trainee_id = :person");
    private static final String CHOSEN = LINES.formatted(CountersignQueries.AWAITED, "s.id in (:records)")
            .replace("s.signed_at desc", "s.signed_at");
    private static final String SIGNED = """
            select exists (
                select 1
                from signed_sheet
                where tenant_id = :tenant
                  and sheet_id = :sheet
                  and signer_id = :signer)
            """;

    private final JdbcClient jdbc;

    SignedLineQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    boolean signed(UUID signer, UUID sheet) {
        return jdbc.sql(SIGNED)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .param("signer", signer)
                .query(Boolean.class)
                .single();
    }

    List<SignedLine> signedBy(UUID signer) {
        return lines(SIGNED_BY, signer);
    }

    List<SignedLine> about(UUID trainee) {
        return lines(ABOUT, trainee);
    }

    /** These records, oldest signature first. */
    List<SignedLine> chosen(Collection<UUID> records) {
        return records.isEmpty()
                ? List.of()
                : jdbc.sql(CHOSEN)
                        .param("tenant", TenantScope.require())
                        .param("records", records)
                        .query((row, n) -> line(row))
                        .list();
    }

    private List<SignedLine> lines(String sql, UUID person) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .query((row, n) -> line(row))
                .list();
    }

    private static SignedLine line(ResultSet row) throws SQLException {
        return new SignedLine(
                row.getObject("id", UUID.class),
                row.getString("title"),
                row.getString("reference"),
                row.getString("printed_name"),
                row.getString("signer_name"),
                row.getString("signer_role"),
                row.getString("meaning"),
                row.getObject("case_ended_at", OffsetDateTime.class).toInstant(),
                row.getObject("signed_at", OffsetDateTime.class).toInstant(),
                ZoneId.of(row.getString("signed_zone")),
                Verdict.valueOf(row.getString("verdict")),
                row.getBoolean("late"),
                new RecordMarks(false, null, row.getBoolean("countersign_awaited")));
    }
}
