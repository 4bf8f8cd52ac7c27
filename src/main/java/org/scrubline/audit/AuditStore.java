package org.scrubline.audit;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Origin;
import org.scrubline.platform.Role;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Adds entries; there is no statement here that changes one, and the server may run none. */
@Repository
class AuditStore {

    private static final String INSERT = """
            insert into audit_entry (
                tenant_id, entered_at, device_at, action, actor_id, actor_roles, on_behalf_of, about_id, programme_id,
                record_kind, record_id, record_version, record_label, reason, value_before, value_after,
                session_hash, source_address, app_version, seen_hour)
            values (
                :tenant, :at, :deviceAt, :action, :actor, :roles, :onBehalfOf, :about, :programme,
                :kind, :record, :version, :label, :reason, :before, :after,
                :session, :address, :appVersion, :seenHour)
            on conflict (tenant_id, actor_id, record_kind, record_id, seen_hour) do nothing
            """;

    private final JdbcClient jdbc;

    AuditStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** An entry about to be written. */
    record Fresh(Audited event, @Nullable UUID actor, Set<Role> roles, Origin origin, Instant at) {}

    /** Adds an entry; one with an hour only when there is none of the same actor and record in it. */
    void insert(Fresh fresh, @Nullable Instant seenHour) {
        Audited event = fresh.event();
        jdbc.sql(AuditSealStore.WRITING)
                .param("scope", TenantScope.require().toString())
                .query((row, n) -> true)
                .single();
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("at", utc(fresh.at()))
                .param("deviceAt", utc(event.deviceTime()))
                .param("action", event.action())
                .param("actor", fresh.actor())
                .param("roles", fresh.roles().stream().sorted().map(Role::name).collect(Collectors.joining(",")))
                .param("onBehalfOf", event.onBehalfOf())
                .param("about", event.about())
                .param("programme", event.programme())
                .param("kind", event.item().kind())
                .param("record", event.item().id())
                .param("version", event.item().version())
                .param("label", event.item().label())
                .param("reason", event.reason())
                .param("before", event.before())
                .param("after", event.after())
                .param("session", fresh.origin().sessionHash())
                .param("address", fresh.origin().address())
                .param("appVersion", fresh.origin().version())
                .param("seenHour", utc(seenHour))
                .update();
    }

    private static @Nullable OffsetDateTime utc(@Nullable Instant at) {
        return at == null ? null : at.atOffset(ZoneOffset.UTC);
    }
}
