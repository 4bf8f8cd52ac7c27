package org.scrubline.signoff;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads who asked for a record to be void and what was decided. */
@Repository
class VoidQueries {

    private static final String OF_SHEET = """
            select r.id, r.content, r.content_hash,
                d.id as decision_id, d.content as decision_content, d.content_hash as decision_hash
            from void_request r
            left join void_decision d on d.tenant_id = r.tenant_id and d.request_id = r.id
            where r.tenant_id = :tenant
              and r.sheet_id = :sheet
            order by r.signed_at, r.id
            """;
    private final JdbcClient jdbc;

    VoidQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Oldest first. */
    List<VoidFile> ofSheet(UUID sheet) {
        return jdbc.sql(OF_SHEET)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .query((row, n) -> {
                    UUID decision = row.getObject("decision_id", UUID.class);
                    return new VoidFile(
                            Statement.stored(
                                    row.getObject("id", UUID.class),
                                    row.getString("content"),
                                    row.getString("content_hash")),
                            decision == null
                                    ? Optional.empty()
                                    : Optional.of(Statement.stored(
                                            decision,
                                            row.getString("decision_content"),
                                            row.getString("decision_hash"))));
                })
                .list();
    }
}
