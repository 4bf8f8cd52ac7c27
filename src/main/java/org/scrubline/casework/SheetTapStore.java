package org.scrubline.casework;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Which taps of a device made which version of a sheet, so that none is applied twice. */
@Repository
class SheetTapStore {

    private static final String TAP = """
            select lock_version
            from sheet_tap
            where tenant_id = :tenant
              and sheet_id = :sheet
              and tap_id = :tap
            """;
    private static final String TAPS = """
            select tap_id
            from sheet_tap
            where tenant_id = :tenant
              and sheet_id = :sheet
            order by recorded_at, lock_version
            """;
    private static final String ADD_TAP = """
            insert into sheet_tap (tenant_id, sheet_id, tap_id, lock_version, recorded_at)
            values (:tenant, :sheet, :tap, :version, :at)
            """;

    private final JdbcClient jdbc;

    SheetTapStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The version a tap made, when it was applied before. */
    Optional<Integer> versionOf(UUID sheet, UUID tap) {
        return on(TAP, sheet).param("tap", tap).query(Integer.class).optional();
    }

    List<UUID> ofSheet(UUID sheet) {
        return on(TAPS, sheet).query(UUID.class).list();
    }

    void add(UUID sheet, UUID tap, int version, Instant at) {
        on(ADD_TAP, sheet)
                .param("tap", tap)
                .param("version", version)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    private JdbcClient.StatementSpec on(String sql, UUID sheet) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("sheet", sheet);
    }
}
