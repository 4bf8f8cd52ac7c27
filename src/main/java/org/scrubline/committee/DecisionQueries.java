package org.scrubline.committee;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Reads signed decisions. */
@Repository
class DecisionQueries {

    /** A part of the question holds when its parameter is not null. */
    private static final String FIND = """
            select d.id, d.content, d.content_hash
            from committee_decision d
            where d.tenant_id = :tenant
              and (cast(:id as uuid) is null or d.id = :id)
              and (cast(:meeting as uuid) is null or d.meeting_id = :meeting)
              and (cast(:trainee as uuid) is null or d.trainee_id = :trainee)
              and (cast(:programmes as uuid[]) is null or d.programme_id = any (cast(:programmes as uuid[])))
            order by d.signed_at desc, d.id
            """;

    private static final String RESTS_ON = """
            select exists (
                select 1
                from committee_decision
                where tenant_id = :tenant
                  and pack_id = :pack)
            """;
    /** Named last to hear an appeal against a decision that rests on this evidence. */
    private static final String HEARS = """
            select exists (
                select 1
                from committee_decision d
                join committee_act a on a.tenant_id = d.tenant_id and a.decision_id = d.id and a.kind = 'PANEL_NAMED'
                join appeal_panel p on p.tenant_id = a.tenant_id and p.act_id = a.id
                where d.tenant_id = :tenant
                  and d.pack_id = :pack
                  and p.person_id = :person
                  and not exists (select 1
                                  from committee_act later
                                  where later.tenant_id = a.tenant_id
                                    and later.decision_id = a.decision_id
                                    and later.kind = 'PANEL_NAMED'
                                    and later.signed_at > a.signed_at))
            """;

    private final JdbcClient jdbc;

    DecisionQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Which decisions; null leaves a part out. */
    record Filter(
            @Nullable UUID id,
            @Nullable UUID meeting,
            @Nullable UUID trainee,
            @Nullable Collection<UUID> programmes) {

        static Filter id(UUID decision) {
            return new Filter(decision, null, null, null);
        }

        static Filter meeting(UUID meeting) {
            return new Filter(null, meeting, null, null);
        }

        static Filter trainee(UUID trainee) {
            return new Filter(null, null, trainee, null);
        }

        static Filter programmes(Collection<UUID> programmes) {
            return new Filter(null, null, null, programmes);
        }
    }

    Optional<Decision> byId(UUID id) {
        return find(Filter.id(id)).stream().findFirst();
    }

    /** Newest first. */
    List<Decision> find(Filter filter) {
        return sql(FIND)
                .param("id", filter.id())
                .param("meeting", filter.meeting())
                .param("trainee", filter.trainee())
                .param("programmes", array(filter.programmes()))
                .query((row, n) -> {
                    String json = row.getString("content");
                    return new Decision(
                            row.getObject("id", UUID.class),
                            SignedDecision.read(json),
                            json,
                            row.getString("content_hash"));
                })
                .list();
    }

    /** Whether any decision rests on this evidence. */
    boolean restsOn(UUID pack) {
        return sql(RESTS_ON).param("pack", pack).query(Boolean.class).single();
    }

    boolean hears(UUID person, UUID pack) {
        return sql(HEARS)
                .param("pack", pack)
                .param("person", person)
                .query(Boolean.class)
                .single();
    }

    private static @Nullable String array(@Nullable Collection<UUID> ids) {
        return ids == null ? null : ids.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}"));
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
