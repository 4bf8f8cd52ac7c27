package org.scrubline.people;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.NamedRecords.NamedRecord;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What is open to visitors. */
@Repository
class VisitorStore {

    private static final String ACCESS = """
            select a.id, a.programme_id, a.visitor_id, v.printed_name as visitor_name, v.active, a.purpose,
                a.starts_at, a.ends_at, g.printed_name as given_by, a.ended_at, e.printed_name as ended_by
            from visitor_access a
            join person v on v.tenant_id = a.tenant_id and v.id = a.visitor_id
            join person g on g.tenant_id = a.tenant_id and g.id = a.given_by
            left join person e on e.tenant_id = a.tenant_id and e.id = a.ended_by
            where a.tenant_id = :tenant
              and a.%s = :id
            order by a.given_at%s, a.id
            """;
    private static final String FIND = ACCESS.formatted("id", "");
    private static final String OF_VISITOR = ACCESS.formatted("visitor_id", "");
    private static final String OF_PROGRAMME = ACCESS.formatted("programme_id", " desc");
    private static final String TRAINEES = """
            select p.id, p.printed_name, p.active
            from visitor_record r
            join person p on p.tenant_id = r.tenant_id and p.id = r.trainee_id
            where r.tenant_id = :tenant
              and r.access_id = :access
            order by p.printed_name, p.id
            """;
    private static final String RECORDS = """
            select signed_sheet_id
            from visitor_record
            where tenant_id = :tenant
              and access_id = :access
              and signed_sheet_id is not null
            order by signed_sheet_id
            """;
    private static final String INSERT = """
            insert into visitor_access (
                tenant_id, id, programme_id, visitor_id, purpose, starts_at, ends_at, given_by, given_at)
            values (:tenant, :id, :programme, :visitor, :purpose, :from, :until, :by, :at)
            """;
    private static final String INSERT_RECORD = """
            insert into visitor_record (tenant_id, id, access_id, trainee_id, signed_sheet_id)
            values (:tenant, :id, :access, :trainee, :record)
            """;
    private static final String END = """
            update visitor_access
            set ended_at = :at,
                ended_by = :by
            where tenant_id = :tenant
              and id = :id
              and ended_at is null
            """;

    private final JdbcClient jdbc;
    private final NamedRecords records;

    VisitorStore(JdbcClient jdbc, NamedRecords records) {
        this.jdbc = jdbc;
        this.records = records;
    }

    /** An access about to be opened; its request has been checked. */
    record Fresh(
            UUID id, UUID programme, VisitorRequest request, Instant from, Instant until, UUID givenBy, Instant at) {}

    Optional<VisitorAccess> find(UUID id) {
        return access(FIND, id).stream().findFirst();
    }

    List<VisitorAccess> ofVisitor(UUID visitor) {
        return access(OF_VISITOR, visitor);
    }

    List<VisitorAccess> ofProgramme(UUID programme) {
        return access(OF_PROGRAMME, programme);
    }

    void insert(Fresh fresh) {
        VisitorRequest request = fresh.request();
        on(INSERT)
                .param("id", fresh.id())
                .param("programme", fresh.programme())
                .param("visitor", request.visitorId())
                .param("purpose", request.purpose())
                .param("from", utc(fresh.from()))
                .param("until", utc(fresh.until()))
                .param("by", fresh.givenBy())
                .param("at", utc(fresh.at()))
                .update();
        request.traineeIds().forEach(trainee -> insert(fresh.id(), trainee, null));
        request.recordIds().forEach(signed -> insert(fresh.id(), null, signed));
    }

    private void insert(UUID access, @Nullable UUID trainee, @Nullable UUID signed) {
        on(INSERT_RECORD)
                .param("id", UUID.randomUUID())
                .param("access", access)
                .param("trainee", trainee)
                .param("record", signed)
                .update();
    }

    /** False when it was ended before. */
    boolean end(UUID id, Instant at, UUID by) {
        return on(END).param("id", id).param("at", utc(at)).param("by", by).update() == 1;
    }

    private List<VisitorAccess> access(String sql, UUID id) {
        return on(sql).param("id", id).query((row, n) -> access(row)).list();
    }

    private VisitorAccess access(ResultSet row) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        OffsetDateTime ended = row.getObject("ended_at", OffsetDateTime.class);
        return new VisitorAccess(
                id,
                row.getObject("programme_id", UUID.class),
                new Person(
                        row.getObject("visitor_id", UUID.class),
                        row.getString("visitor_name"),
                        row.getBoolean("active")),
                row.getString("purpose"),
                row.getObject("starts_at", OffsetDateTime.class).toInstant(),
                row.getObject("ends_at", OffsetDateTime.class).toInstant(),
                row.getString("given_by"),
                ended == null ? null : ended.toInstant(),
                row.getString("ended_by"),
                trainees(id),
                records(id));
    }

    private List<Person> trainees(UUID access) {
        return on(TRAINEES)
                .param("access", access)
                .query((row, n) -> new Person(
                        row.getObject("id", UUID.class), row.getString("printed_name"), row.getBoolean("active")))
                .list();
    }

    private List<NamedRecord> records(UUID access) {
        return on(RECORDS).param("access", access).query(UUID.class).list().stream()
                .map(records::find)
                .flatMap(Optional::stream)
                .toList();
    }

    private JdbcClient.StatementSpec on(String sql) {
        return jdbc.sql(sql).param("tenant", TenantScope.require());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
