package org.scrubline.signoff;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class RemarkStore {

    private static final String OF_SHEET = """
            select r.id, p.printed_name, r.body, r.written_at
            from sheet_remark r
            join person p on p.tenant_id = r.tenant_id and p.id = r.author_id
            where r.tenant_id = :tenant
              and r.sheet_id = :sheet
            order by r.written_at, r.id
            """;
    private static final String INSERT = """
            insert into sheet_remark (tenant_id, id, sheet_id, author_id, body, written_at)
            values (:tenant, :id, :sheet, :author, :body, :at)
            """;

    private final JdbcClient jdbc;

    RemarkStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Remark> ofSheet(UUID sheet) {
        return jdbc.sql(OF_SHEET)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .query((row, n) -> new Remark(
                        row.getObject("id", UUID.class),
                        row.getString("printed_name"),
                        row.getString("body"),
                        row.getObject("written_at", OffsetDateTime.class).toInstant()))
                .list();
    }

    void insert(UUID sheet, UUID author, Remark remark) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", remark.id())
                .param("sheet", sheet)
                .param("author", author)
                .param("body", remark.body())
                .param("at", remark.writtenAt().atOffset(ZoneOffset.UTC))
                .update();
    }
}
