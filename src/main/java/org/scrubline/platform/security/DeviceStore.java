package org.scrubline.platform.security;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Device;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Kinds of device an account was logged in to from. */
@Repository
class DeviceStore {

    /** The first one of an account surprises nobody. */
    private static final String SEEN = """
            insert into login_device as d (account_id, device, first_at, last_at, last_address, known)
            values (:account, :device, :at, :at, :address,
                    not exists (select 1 from login_device where account_id = :account))
            on conflict (account_id, device) do update
            set last_at = :at,
                last_address = :address
            returning not known and first_at = last_at
            """;

    private static final String UNKNOWN = """
            select device, first_at, last_at, last_address
            from login_device
            where account_id = :account
              and device <> :here
              and not known
            order by first_at, device
            """;
    private static final String KNOWN = """
            update login_device
            set known = true
            where account_id = :account
              and device <> :here
              and not known
            """;
    private static final String FORGET = """
            delete from login_device
            where account_id = :account
              and device <> :here
              and not known
            """;

    private static final String FORGET_OTHERS = """
            delete from login_device
            where account_id = :account
              and device <> :here
            """;

    private final JdbcClient jdbc;

    DeviceStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A kind of device with its first and last log-in and where the last came from. */
    record Seen(Device device, Instant firstAt, Instant lastAt, String lastAddress) {}

    /** True when this account was never logged in to from such a device before, but was from another. */
    boolean seen(UUID account, Device device, String address, Instant at) {
        return jdbc.sql(SEEN)
                .param("account", account)
                .param("device", device.text())
                .param("address", address)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .query(Boolean.class)
                .single();
    }

    /** Those the owner has not called their own, without the one they ask from. */
    List<Seen> unknown(UUID account, Device here) {
        return on(UNKNOWN, account, here)
                .query((row, n) -> new Seen(
                        Device.parse(row.getString("device")).orElseGet(() -> Device.of(null)),
                        row.getObject("first_at", OffsetDateTime.class).toInstant(),
                        row.getObject("last_at", OffsetDateTime.class).toInstant(),
                        row.getString("last_address")))
                .list();
    }

    void known(UUID account, Device here) {
        on(KNOWN, account, here).update();
    }

    /** So that the next log-in from one of them is told again. */
    void forget(UUID account, Device here) {
        on(FORGET, account, here).update();
    }

    /** The same for all others, known or not. */
    void forgetOthers(UUID account, Device here) {
        on(FORGET_OTHERS, account, here).update();
    }

    private JdbcClient.StatementSpec on(String sql, UUID account, Device here) {
        return jdbc.sql(sql).param("account", account).param("here", here.text());
    }
}
