package org.scrubline.committee;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Signed statements, added and read. */
@Repository
class ActStore {

    private static final String INSERT = """
            insert into committee_act (
                tenant_id, id, programme_id, trainee_id, decision_id, kind,
                content, content_hash, signer_id, signer_name, signer_role, meaning, signed_at, signed_zone)
            values (
                :tenant, :id, :programme, :trainee, :decision, :kind,
                :content, :hash, :signer, :signerName, :signerRole, :meaning, :signedAt, :signedZone)
            """;
    private static final String PANEL = """
            insert into appeal_panel (tenant_id, act_id, person_id)
            values (:tenant, :id, :person)
            """;
    private static final String OF_DECISION = """
            select id, content, content_hash
            from committee_act
            where tenant_id = :tenant
              and decision_id = :decision
            order by signed_at, id
            """;
    private static final String OF_TRAINEE = """
            select id, content, content_hash
            from committee_act
            where tenant_id = :tenant
              and programme_id = :programme
              and trainee_id = :trainee
              and decision_id is null
            order by signed_at, id
            """;
    private static final String HEARD_BY = """
            select distinct a.decision_id
            from committee_act a
            join appeal_panel p on p.tenant_id = a.tenant_id and p.act_id = a.id
            where a.tenant_id = :tenant
              and p.person_id = :person
            """;

    private final JdbcClient jdbc;

    ActStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Oldest first. */
    List<Act> ofDecision(UUID decision) {
        return sql(OF_DECISION)
                .param("decision", decision)
                .query((row, n) -> act(row))
                .list();
    }

    /** Suspensions and reinstatements of a trainee, oldest first. */
    List<Act> ofTrainee(UUID programme, UUID trainee) {
        return sql(OF_TRAINEE)
                .param("programme", programme)
                .param("trainee", trainee)
                .query((row, n) -> act(row))
                .list();
    }

    /** Decisions this person was ever named to hear an appeal against. */
    List<UUID> heardBy(UUID person) {
        return sql(HEARD_BY).param("person", person).query(UUID.class).list();
    }

    void insert(Act act) {
        ActContent content = act.content();
        sql(INSERT)
                .param("id", act.id())
                .param("programme", content.programme().id())
                .param("trainee", content.trainee().id())
                .param(
                        "decision",
                        content.decision() == null ? null : content.decision().id())
                .param("kind", content.kind().name())
                .param("content", act.json())
                .param("hash", act.hash())
                .param("signer", content.signer().id())
                .param("signerName", content.signer().name())
                .param("signerRole", content.signer().role())
                .param("meaning", content.signer().meaningKey())
                .param("signedAt", content.signedAt().atOffset(ZoneOffset.UTC))
                .param("signedZone", content.signedZone().getId())
                .update();
        content.persons()
                .forEach(person -> sql(PANEL)
                        .param("id", act.id())
                        .param("person", person.id())
                        .update());
    }

    private static Act act(ResultSet row) throws SQLException {
        String json = row.getString("content");
        return new Act(row.getObject("id", UUID.class), ActContent.read(json), json, row.getString("content_hash"));
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
