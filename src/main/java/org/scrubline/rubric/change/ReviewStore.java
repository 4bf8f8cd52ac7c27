package org.scrubline.rubric.change;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class ReviewStore {

    private static final String OF_DRAFT = """
            select id, draft_id, source_hash, content_hash, agrees, words, reviewer_id, reviewer_name, reviewed_at
            from rubric_review
            where tenant_id = :tenant
              and draft_id = :draft
            order by reviewed_at desc, id
            """;
    private static final String INSERT = """
            insert into rubric_review (
                tenant_id, id, draft_id, source_hash, content_hash, agrees, words, reviewer_id, reviewer_name, reviewed_at)
            values (:tenant, :id, :draft, :source, :content, :agrees, :words, :reviewer, :name, :at)
            """;

    private final JdbcClient jdbc;

    ReviewStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Newest first. */
    List<RubricReview> of(UUID draft) {
        return jdbc.sql(OF_DRAFT)
                .param("tenant", TenantScope.require())
                .param("draft", draft)
                .query((row, n) -> new RubricReview(
                        row.getObject("id", UUID.class),
                        row.getObject("draft_id", UUID.class),
                        row.getString("source_hash"),
                        row.getString("content_hash"),
                        row.getBoolean("agrees"),
                        row.getString("words"),
                        row.getObject("reviewer_id", UUID.class),
                        row.getString("reviewer_name"),
                        row.getObject("reviewed_at", OffsetDateTime.class).toInstant()))
                .list();
    }

    void insert(RubricReview review) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", review.id())
                .param("draft", review.draftId())
                .param("source", review.sourceHash())
                .param("content", review.contentHash())
                .param("agrees", review.agrees())
                .param("words", review.words())
                .param("reviewer", review.reviewerId())
                .param("name", review.reviewerName())
                .param("at", review.reviewedAt().atOffset(ZoneOffset.UTC))
                .update();
    }
}
