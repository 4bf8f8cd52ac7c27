package org.scrubline.casework;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Finds open sheets of ended cases. */
@Repository
class WaitingSheetQueries {

    private static final String WAITING = """
            select s.id, c.programme_id, s.scorer_id, c.ended_at
            from score_sheet s
            join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            where s.tenant_id = :tenant
              and s.state = 'OPEN'
              and c.state = 'ENDED'
            """;
    private static final String ENDED_BEFORE = WAITING + """
              and c.ended_at <= :at
            order by c.ended_at, s.id
            """;
    private static final String OF_SCORER = WAITING + """
              and s.scorer_id = :scorer
            order by c.ended_at, s.id
            """;

    private final JdbcClient jdbc;

    WaitingSheetQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<WaitingSheet> endedBefore(Instant at) {
        return jdbc.sql(ENDED_BEFORE)
                .param("tenant", TenantScope.require())
                .param("at", at.atOffset(ZoneOffset.UTC))
                .query((row, n) -> waiting(row))
                .list();
    }

    List<WaitingSheet> ofScorer(UUID scorer) {
        return jdbc.sql(OF_SCORER)
                .param("tenant", TenantScope.require())
                .param("scorer", scorer)
                .query((row, n) -> waiting(row))
                .list();
    }

    private static WaitingSheet waiting(ResultSet row) throws SQLException {
        return new WaitingSheet(
                row.getObject("id", UUID.class),
                row.getObject("programme_id", UUID.class),
                row.getObject("scorer_id", UUID.class),
                row.getObject("ended_at", OffsetDateTime.class).toInstant());
    }
}
