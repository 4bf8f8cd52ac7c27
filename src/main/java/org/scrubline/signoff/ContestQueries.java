package org.scrubline.signoff;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.scrubline.signoff.SheetContent.Named;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads contests whole: two statements for any number of them. */
@Repository
class ContestQueries {

    /** What to look for; a part holds when its parameter is not null. */
    private static final String WHERE = """
            c.tenant_id = :tenant
              and (cast(:id as uuid) is null or c.id = :id)
              and (cast(:sheet as uuid) is null or c.sheet_id = :sheet)
              and (cast(:person as uuid) is null
                   or s.trainee_id = :person
                   or s.signer_id = :person
                   or s.programme_id = any (cast(:programmes as uuid[]))
                   or exists (select 1
                              from contest_step named
                              where named.tenant_id = c.tenant_id
                                and named.contest_id = c.id
                                and named.reviewer_id = :person))
            """;

    private static final String CONTESTS = """
            select c.id, c.due_at, c.content, c.content_hash,
                s.programme_id, s.signer_id, s.signer_name, r.title, o.reference,
                exists (select 1
                        from void_decision v
                        where v.tenant_id = c.tenant_id
                          and v.sheet_id = c.sheet_id
                          and v.confirmed) as voided
            from contest c
            join signed_sheet s on s.tenant_id = c.tenant_id and s.id = c.signed_sheet_id
            join rubric_version r on r.tenant_id = s.tenant_id and r.id = s.rubric_version_id
            join surgical_case o on o.tenant_id = s.tenant_id and o.id = s.case_id
            where %s
            order by c.due_at, c.id
            """.formatted(WHERE);
    private static final String STEPS = """
            select e.contest_id, e.id, e.content, e.content_hash
            from contest_step e
            join contest c on c.tenant_id = e.tenant_id and c.id = e.contest_id
            join signed_sheet s on s.tenant_id = c.tenant_id and s.id = c.signed_sheet_id
            where %s
            order by e.contest_id, e.ordinal
            """.formatted(WHERE);

    private final JdbcClient jdbc;

    ContestQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Which contests; null leaves a part out.
     *
     * @param person trainee, scorer or reviewer
     * @param programmes programmes this person leads, counted only with a person
     */
    record Filter(
            @Nullable UUID id,
            @Nullable UUID sheet,
            @Nullable UUID person,
            Collection<UUID> programmes) {

        static Filter id(UUID contest) {
            return new Filter(contest, null, null, List.of());
        }

        static Filter sheet(UUID sheet) {
            return new Filter(null, sheet, null, List.of());
        }

        static Filter person(UUID person, Collection<UUID> programmes) {
            return new Filter(null, null, person, programmes);
        }
    }

    /** The one due first comes first. */
    List<ContestFile> find(Filter filter) {
        Map<UUID, List<Statement>> steps = steps(filter);
        return ask(CONTESTS, filter)
                .query((row, n) -> {
                    UUID id = row.getObject("id", UUID.class);
                    return new ContestFile(
                            row.getObject("programme_id", UUID.class),
                            new Named(row.getObject("signer_id", UUID.class), row.getString("signer_name")),
                            row.getString("title"),
                            row.getString("reference"),
                            row.getObject("due_at", OffsetDateTime.class).toInstant(),
                            row.getBoolean("voided"),
                            Statement.stored(id, row.getString("content"), row.getString("content_hash")),
                            steps.getOrDefault(id, List.of()));
                })
                .list();
    }

    private Map<UUID, List<Statement>> steps(Filter filter) {
        Map<UUID, List<Statement>> found = new HashMap<>();
        ask(STEPS, filter).query(row -> {
            found.computeIfAbsent(row.getObject("contest_id", UUID.class), id -> new ArrayList<>())
                    .add(Statement.stored(
                            row.getObject("id", UUID.class), row.getString("content"), row.getString("content_hash")));
        });
        return found;
    }

    private JdbcClient.StatementSpec ask(String sql, Filter filter) {
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("id", filter.id())
                .param("sheet", filter.sheet())
                .param("person", filter.person())
                .param(
                        "programmes",
                        filter.programmes().stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}")));
    }
}
