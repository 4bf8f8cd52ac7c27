package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads who was named to sign new versions. */
@Repository
class DelegateQueries {

    private static final String OF_SHEET = """
            select id, content, content_hash
            from version_delegate
            where tenant_id = :tenant
              and sheet_id = :sheet
            order by signed_at, id
            """;

    private final JdbcClient jdbc;

    DelegateQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Oldest first. */
    List<Statement> ofSheet(UUID sheet) {
        return jdbc.sql(OF_SHEET)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .query((row, n) -> Statement.stored(
                        row.getObject("id", UUID.class), row.getString("content"), row.getString("content_hash")))
                .list();
    }
}
