package org.scrubline.committee;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.committee.Meeting.Conflict;
import org.scrubline.committee.Meeting.Member;
import org.scrubline.people.Person;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Meetings, who is invited, whom they speak about, and declared conflicts. */
@Repository
class MeetingStore {

    private static final String COLUMNS = """
            select id, programme_id, planned_at, chair_id, state
            from meeting
            where tenant_id = :tenant
            """;
    private static final String FIND = COLUMNS + """
              and id = :id
            """;
    private static final String HOLD = FIND + """
            for update
            """;
    private static final String OF_PROGRAMMES = COLUMNS + """
              and programme_id = any (cast(:programmes as uuid[]))
            order by planned_at desc, id
            """;
    private static final String MEMBERS = """
            select p.id, p.printed_name, p.active, m.present
            from meeting_member m
            join person p on p.tenant_id = m.tenant_id and p.id = m.person_id
            where m.tenant_id = :tenant
              and m.meeting_id = :id
            order by p.printed_name, p.id
            """;
    private static final String TRAINEES = """
            select p.id, p.printed_name, p.active
            from meeting_trainee t
            join person p on p.tenant_id = t.tenant_id and p.id = t.trainee_id
            where t.tenant_id = :tenant
              and t.meeting_id = :id
            order by p.printed_name, p.id
            """;
    private static final String CONFLICTS = """
            select member_id, trainee_id, reason, declared_at
            from meeting_conflict
            where tenant_id = :tenant
              and meeting_id = :id
            order by declared_at, member_id, trainee_id
            """;
    private static final String INSERT = """
            insert into meeting (tenant_id, id, programme_id, planned_at, chair_id, planned_by, created_at)
            values (:tenant, :id, :programme, :planned, :chair, :by, :at)
            """;
    private static final String INVITE = """
            insert into meeting_member (tenant_id, meeting_id, person_id)
            values (:tenant, :id, :person)
            on conflict (tenant_id, meeting_id, person_id) do nothing
            """;
    private static final String ADD_TRAINEE = """
            insert into meeting_trainee (tenant_id, meeting_id, trainee_id)
            values (:tenant, :id, :person)
            on conflict (tenant_id, meeting_id, trainee_id) do nothing
            """;
    private static final String MOVE = """
            update meeting
            set state = :state
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String CHAIR = """
            update meeting
            set chair_id = :chair
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String PRESENCE = """
            update meeting_member
            set present = person_id = any (cast(:present as uuid[]))
            where tenant_id = :tenant
              and meeting_id = :id
            """;
    private static final String CONFLICT = """
            insert into meeting_conflict (
                tenant_id, meeting_id, member_id, trainee_id, reason, declared_by, declared_at)
            values (:tenant, :id, :member, :trainee, :reason, :by, :at)
            on conflict (tenant_id, meeting_id, member_id, trainee_id) do update
            set reason = excluded.reason, declared_by = excluded.declared_by, declared_at = excluded.declared_at
            """;

    private final JdbcClient jdbc;

    MeetingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Meeting> find(UUID id) {
        return sql(FIND, id).query((row, n) -> meeting(row)).optional();
    }

    /** The same, kept from changing until the transaction ends. */
    Optional<Meeting> hold(UUID id) {
        return sql(HOLD, id).query((row, n) -> meeting(row)).optional();
    }

    /** Newest first. */
    List<Meeting> ofProgrammes(Collection<UUID> programmes) {
        return jdbc.sql(OF_PROGRAMMES)
                .param("tenant", TenantScope.require())
                .param("programmes", array(programmes))
                .query((row, n) -> meeting(row))
                .list();
    }

    void insert(UUID id, UUID programme, MeetingPlan plan, UUID by, Instant at) {
        sql(INSERT, id)
                .param("programme", programme)
                .param("planned", Objects.requireNonNull(plan.at()).atOffset(ZoneOffset.UTC))
                .param("chair", plan.chair())
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
        plan.members().forEach(person -> invite(id, person));
        plan.trainees().forEach(person -> addTrainee(id, person));
    }

    void invite(UUID id, UUID person) {
        sql(INVITE, id).param("person", person).update();
    }

    void addTrainee(UUID id, UUID person) {
        sql(ADD_TRAINEE, id).param("person", person).update();
    }

    void move(UUID id, MeetingState state) {
        sql(MOVE, id).param("state", state.name()).update();
    }

    void chair(UUID id, UUID person) {
        sql(CHAIR, id).param("chair", person).update();
    }

    void presence(UUID id, Collection<UUID> present) {
        sql(PRESENCE, id).param("present", array(present)).update();
    }

    void conflict(UUID id, UUID by, Conflict conflict) {
        sql(CONFLICT, id)
                .param("member", conflict.memberId())
                .param("trainee", conflict.traineeId())
                .param("reason", conflict.reason())
                .param("by", by)
                .param("at", conflict.declaredAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    private Meeting meeting(ResultSet row) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        return new Meeting(
                id,
                row.getObject("programme_id", UUID.class),
                row.getObject("planned_at", OffsetDateTime.class).toInstant(),
                row.getObject("chair_id", UUID.class),
                MeetingState.valueOf(row.getString("state")),
                sql(MEMBERS, id)
                        .query((one, n) -> new Member(person(one), one.getBoolean("present")))
                        .list(),
                sql(TRAINEES, id).query((one, n) -> person(one)).list(),
                sql(CONFLICTS, id).query((one, n) -> conflict(one)).list());
    }

    private static Conflict conflict(ResultSet row) throws SQLException {
        return new Conflict(
                row.getObject("member_id", UUID.class),
                row.getObject("trainee_id", UUID.class),
                row.getString("reason"),
                row.getObject("declared_at", OffsetDateTime.class).toInstant());
    }

    private static Person person(ResultSet row) throws SQLException {
        return new Person(row.getObject("id", UUID.class), row.getString("printed_name"), row.getBoolean("active"));
    }

    private StatementSpec sql(String text, UUID id) {
        return jdbc.sql(text).param("tenant", TenantScope.require()).param("id", id);
    }

    private static String array(Collection<UUID> ids) {
        return ids.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}"));
    }
}
