package org.scrubline.people;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Role;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The roles people hold now. A role that ended keeps its row with the instant. */
@Repository
class RoleStore {

    private static final String HELD = """
            select r.person_id, p.printed_name, r.role
            from programme_role r
            join person p on p.tenant_id = r.tenant_id and p.id = r.person_id
            where r.tenant_id = :tenant
              and r.programme_id = :programme
              and r.ended_at is null
            order by p.printed_name, r.person_id, r.role
            """;
    private static final String EVERYONE = """
            select p.id, p.printed_name, p.active
            from person p
            where p.tenant_id = :tenant
              and p.id in (select person_id
                           from programme_role
                           where tenant_id = :tenant
                             and programme_id = :programme
                             and role in (:roles))
            order by p.printed_name, p.id
            """;
    private static final String END = """
            update programme_role
            set ended_at = :at
            where tenant_id = :tenant
              and programme_id = :programme
              and person_id = :person
              and role = :role
              and ended_at is null
            """;
    /** Two administrators who end each other's role wait for one another here. */
    private static final String ADMINISTRATORS = """
            select person_id
            from programme_role
            where tenant_id = :tenant
              and programme_id = :programme
              and role = 'ADMINISTRATOR'
              and ended_at is null
            order by person_id
            for update
            """;

    private final JdbcClient jdbc;

    RoleStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** By name of the person. */
    List<Roles.Held> held(UUID programme) {
        return in(HELD, programme)
                .query((row, n) -> new Roles.Held(
                        row.getObject("person_id", UUID.class),
                        row.getString("printed_name"),
                        Role.valueOf(row.getString("role"))))
                .list();
    }

    /** Everyone who holds or held a role, by name. */
    List<Person> everyone(UUID programme) {
        return everHeld(programme, Role.values());
    }

    /** Everyone who holds or held one of these roles, by name. */
    List<Person> everHeld(UUID programme, Role... roles) {
        return in(EVERYONE, programme)
                .param("roles", Arrays.stream(roles).map(Role::name).toList())
                .query((row, n) -> new Person(
                        row.getObject("id", UUID.class), row.getString("printed_name"), row.getBoolean("active")))
                .list();
    }

    /** False when the role was not held. */
    boolean end(UUID programme, UUID person, Role role, Instant at) {
        return in(END, programme)
                        .param("person", person)
                        .param("role", role.name())
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                > 0;
    }

    List<UUID> administratorsForUpdate(UUID programme) {
        return in(ADMINISTRATORS, programme).query(UUID.class).list();
    }

    private JdbcClient.StatementSpec in(String sql, UUID programme) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("programme", programme);
    }
}
