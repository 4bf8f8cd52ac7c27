package org.scrubline.signoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.casework.Verdict;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Lists of signed sheets, the newest version of each. */
@Repository
class SignedLineQueries {

    private static final String LINES = """
            select s.id, s.version_no, r.title, c.reference, t.printed_name, s.signer_name, s.signer_role, s.meaning,
                s.case_ended_at, s.signed_at, s.signed_zone, s.verdict, s.late, m.contested, m.outcome, w.countersign_awaited
            from signed_sheet s
            join rubric_version r on r.tenant_id = s.tenant_id and r.id = s.rubric_version_id
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            join person t on t.tenant_id = s.tenant_id and t.id = s.trainee_id
            """ + MarkColumns.JOIN + """
            where s.tenant_id = :tenant
              and (%s)
              and not exists (select 1
                              from signed_sheet newer
                              where newer.tenant_id = s.tenant_id
                                and newer.sheet_id = s.sheet_id
                                and newer.version_no > s.version_no)
            order by s.signed_at desc, s.id
            """;
    /** The sheets of which this person signed a version. */
    private static final String MINE = """
            exists (select 1
                    from signed_sheet mine
                    where mine.tenant_id = s.tenant_id
                      and mine.sheet_id = s.sheet_id
                      and mine.signer_id = :person)
            """;

    private static final String VOID = """
            exists (select 1
                    from void_decision v
                    where v.tenant_id = s.tenant_id
                      and v.sheet_id = s.sheet_id
                      and v.confirmed)
            """;
    private static final String SIGNED_BY = LINES.formatted(MINE + " and not " + VOID);
    private static final String SIGNED_BY_VOID = LINES.formatted(MINE + " and " + VOID);
    private static final String ABOUT = LINES.formatted("s.trainee_id = :person and not " + VOID);
    private static final String ABOUT_VOID = LINES.formatted("s.trainee_id = :person and " + VOID);
    /** The sheets somebody else asked to be void and this person may decide on. */
    private static final String TO_DECIDE = LINES.formatted("""
            s.trainee_id <> :person
              and (s.signer_id = :person or s.programme_id = any (cast(:programmes as uuid[])))
              and exists (select 1
                          from void_request q
                          left join void_decision d on d.tenant_id = q.tenant_id and d.request_id = q.id
                          where q.tenant_id = s.tenant_id
                            and q.sheet_id = s.sheet_id
                            and q.signer_id <> :person
                            and d.id is null)
            """);

    private static final String CHOSEN =
            LINES.formatted("s.id = any (cast(:records as uuid[]))").replace("s.signed_at desc", "s.signed_at");

    /** A version this person is writing is no record yet. */
    private static final String SIGNED = """
            select exists (
                select 1
                from signed_sheet s
                where s.tenant_id = :tenant
                  and s.sheet_id = :sheet
                  and s.signer_id = :signer
                  and not exists (select 1
                                  from version_draft d
                                  where d.tenant_id = s.tenant_id
                                    and d.sheet_id = s.sheet_id
                                    and d.editor_id = :signer))
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
        return lines(SIGNED_BY, signer, List.of());
    }

    List<SignedLine> voidSignedBy(UUID signer) {
        return lines(SIGNED_BY_VOID, signer, List.of());
    }

    List<SignedLine> about(UUID trainee) {
        return lines(ABOUT, trainee, List.of());
    }

    List<SignedLine> voidAbout(UUID trainee) {
        return lines(ABOUT_VOID, trainee, List.of());
    }

    /** Void requests that wait for this person. */
    List<SignedLine> voidsToDecide(UUID person, Collection<UUID> directed) {
        return lines(TO_DECIDE, person, directed);
    }

    /** These records, oldest signature first. */
    List<SignedLine> chosen(Collection<UUID> records) {
        return jdbc.sql(CHOSEN)
                .param("tenant", TenantScope.require())
                .param("knownAt", null)
                .param("records", array(records))
                .query((row, n) -> line(row))
                .list();
    }

    private List<SignedLine> lines(String sql, UUID person, Collection<UUID> programmes) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("knownAt", null)
                .param("person", person)
                .param("programmes", array(programmes))
                .query((row, n) -> line(row))
                .list();
    }

    private static String array(Collection<UUID> ids) {
        return ids.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}"));
    }

    private static SignedLine line(ResultSet row) throws SQLException {
        return new SignedLine(
                row.getObject("id", UUID.class),
                row.getInt("version_no"),
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
                MarkColumns.read(row));
    }
}
