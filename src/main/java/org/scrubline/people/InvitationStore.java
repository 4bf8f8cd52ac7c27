package org.scrubline.people;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Who never came in: no password was chosen, and no provider vouched for them. */
@Repository
class InvitationStore {

    private static final String WAITING = """
            select p.id, p.account_id, p.printed_name, a.username,
                   (select max(i.expires_at)
                    from login_invitation i
                    where i.account_id = a.id) as ends_at
            from person p
            join login_account a on a.id = p.account_id
            where p.tenant_id = :tenant
              and p.active
              and a.enabled
              and a.password_hash is null
              and not exists (select 1 from provider_subject s where s.account_id = a.id)
              and exists (select 1
                          from programme_role r
                          where r.tenant_id = p.tenant_id
                            and r.person_id = p.id
                            and r.programme_id = :programme
                            and r.ended_at is null)
            order by p.printed_name, p.id
            """;

    private final JdbcClient jdbc;

    InvitationStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Invitations.Waiting> waiting(UUID programme) {
        return jdbc.sql(WAITING)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .query((row, n) -> new Invitations.Waiting(
                        row.getObject("id", UUID.class),
                        row.getObject("account_id", UUID.class),
                        row.getString("printed_name"),
                        row.getString("username"),
                        Optional.ofNullable(row.getObject("ends_at", OffsetDateTime.class))
                                .map(OffsetDateTime::toInstant)
                                .orElse(null)))
                .list();
    }
}
