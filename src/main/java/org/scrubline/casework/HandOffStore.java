package org.scrubline.casework;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Codes that hand a sheet to the supervisor's device, by their hashes. */
@Repository
class HandOffStore {

    private static final String PUT = """
            insert into hand_off (tenant_id, sheet_id, code_hash, offered_by, expires_at)
            values (:tenant, :sheet, :hash, :by, :until)
            on conflict (tenant_id, sheet_id) do update
            set code_hash = excluded.code_hash,
                offered_by = excluded.offered_by,
                expires_at = excluded.expires_at
            """;
    private static final String TAKE = """
            select sheet_id
            from hand_off
            where tenant_id = :tenant
              and code_hash = :hash
              and expires_at > :now
            for update
            """;
    private static final String REMOVE = """
            delete from hand_off
            where tenant_id = :tenant
              and sheet_id = :sheet
            """;

    private final JdbcClient jdbc;

    HandOffStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps a code in place of the sheet's earlier one. */
    void put(UUID sheet, String hash, UUID by, Instant until) {
        jdbc.sql(PUT)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .param("hash", hash)
                .param("by", by)
                .param("until", until.atOffset(ZoneOffset.UTC))
                .update();
    }

    /** The sheet of a code that still holds; nobody else uses the code until the transaction ends. */
    Optional<UUID> take(String hash, Instant now) {
        return jdbc.sql(TAKE)
                .param("tenant", TenantScope.require())
                .param("hash", hash)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .query(UUID.class)
                .optional();
    }

    void remove(UUID sheet) {
        jdbc.sql(REMOVE)
                .param("tenant", TenantScope.require())
                .param("sheet", sheet)
                .update();
    }
}
