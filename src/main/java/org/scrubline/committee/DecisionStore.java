package org.scrubline.committee;

import java.time.ZoneOffset;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Adds signed decisions; the server may run no statement that changes one. */
@Repository
class DecisionStore {

    private static final String INSERT = """
            insert into committee_decision (
                tenant_id, id, programme_id, meeting_id, pack_id, trainee_id, family, bands, level, review_on,
                content, content_hash, signer_id, signer_name, signer_role, meaning, signed_at, signed_zone)
            values (
                :tenant, :id, :programme, :meeting, :pack, :trainee, :family, :bands, :level, :review,
                :content, :hash, :signer, :signerName, :signerRole, :meaning, :signedAt, :signedZone)
            """;
    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('decisions ' || :trainee, 0))
            """;

    private final JdbcClient jdbc;

    DecisionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** One decision about a trainee at a time: each says which one it replaces. */
    void lock(UUID trainee) {
        jdbc.sql(LOCK)
                .param("trainee", trainee.toString())
                .query((row, n) -> true)
                .single();
    }

    void insert(Decision decision) {
        DecisionContent content = decision.content();
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", decision.id())
                .param("programme", content.programme().id())
                .param("meeting", content.meeting())
                .param("pack", content.pack().id())
                .param("trainee", content.trainee().id())
                .param("family", content.family().name())
                .param("bands", content.bands())
                .param("level", content.level() == null ? null : content.level().name())
                .param("review", content.reviewOn())
                .param("content", decision.json())
                .param("hash", decision.hash())
                .param("signer", content.signer().id())
                .param("signerName", content.signer().name())
                .param("signerRole", content.signer().role())
                .param("meaning", content.signer().meaningKey())
                .param("signedAt", decision.signed().signedAt().atOffset(ZoneOffset.UTC))
                .param("signedZone", decision.signed().signedZone().getId())
                .update();
    }
}
