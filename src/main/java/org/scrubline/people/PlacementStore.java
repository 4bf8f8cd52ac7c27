package org.scrubline.people;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class PlacementStore {

    private static final String PLACEMENTS = """
            select l.id, l.trainee_id, l.site_id, l.first_day, l.last_day, l.share, l.ended_on
            from placement l
            join person p on p.tenant_id = l.tenant_id and p.id = l.trainee_id
            where l.tenant_id = :tenant
              and l.programme_id = :programme
            order by p.printed_name, l.trainee_id, l.first_day, l.id
            """;
    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('placements ' || :programme, 0))
            """;
    private static final String INSERT = """
            insert into placement (
                tenant_id, id, programme_id, trainee_id, site_id, first_day, last_day, share, recorded_by, recorded_at)
            values (:tenant, :id, :programme, :trainee, :site, :first, :last, :share, :by, :at)
            """;
    private static final String END = """
            update placement
            set ended_on = :day,
                ended_by = :by,
                ended_at = :at
            where tenant_id = :tenant
              and id = :id
            """;

    private final JdbcClient jdbc;

    PlacementStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** By name of the trainee and first day, with those that ended or never began. */
    List<Placement> of(UUID programme) {
        return jdbc.sql(PLACEMENTS)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .query((row, n) -> placement(row))
                .list();
    }

    /** One change of a programme's placements at a time. */
    void lock(UUID programme) {
        jdbc.sql(LOCK)
                .param("programme", programme.toString())
                .query((row, n) -> true)
                .single();
    }

    void insert(UUID programme, Placement placement, UUID by, Instant at) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", placement.id())
                .param("programme", programme)
                .param("trainee", placement.traineeId())
                .param("site", placement.siteId())
                .param("first", placement.first())
                .param("last", placement.planned())
                .param("share", placement.share())
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    void end(UUID id, LocalDate day, UUID by, Instant at) {
        jdbc.sql(END)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("day", day)
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    private static Placement placement(ResultSet row) throws SQLException {
        return new Placement(
                row.getObject("id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                row.getObject("site_id", UUID.class),
                row.getObject("first_day", LocalDate.class),
                row.getObject("last_day", LocalDate.class),
                row.getInt("share"),
                row.getObject("ended_on", LocalDate.class));
    }
}
