package org.scrubline.people;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Organisations, programmes and sites. */
@Repository
class PlaceStore {

    private static final String INSERT_ORGANISATION = """
            insert into organisation (tenant_id, name, created_at)
            values (:tenant, :name, :at)
            """;
    private static final String PROGRAMMES = """
            select id, name, zone
            from programme
            where tenant_id = :tenant
            order by name
            """;
    private static final String INSERT_PROGRAMME = """
            insert into programme (tenant_id, id, name, zone, created_at)
            values (:tenant, :id, :name, :zone, :at)
            on conflict (tenant_id, name) do nothing
            """;
    private static final String SITES = """
            select id, code, name, zone, closed_on
            from site
            where tenant_id = :tenant
            order by name, id
            """;
    private static final String INSERT_SITE = """
            insert into site (tenant_id, id, code, name, zone)
            values (:tenant, :id, :code, :name, :zone)
            on conflict (tenant_id, code) do nothing
            """;

    private static final String RENAME_SITE = """
            update site
            set name = :name
            where tenant_id = :tenant
              and id = :id
            """;
    private static final String CLOSE_SITE = """
            update site
            set closed_on = :day
            where tenant_id = :tenant
              and id = :id
            """;

    private final JdbcClient jdbc;

    PlaceStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void insertOrganisation(UUID tenant, String name, Instant at) {
        jdbc.sql(INSERT_ORGANISATION)
                .param("tenant", tenant)
                .param("name", name)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    List<Programme> programmes() {
        return jdbc.sql(PROGRAMMES)
                .param("tenant", TenantScope.require())
                .query((row, n) -> new Programme(
                        row.getObject("id", UUID.class), row.getString("name"), ZoneId.of(row.getString("zone"))))
                .list();
    }

    /** False when a programme of that name exists. */
    boolean insertProgramme(Programme programme, Instant at) {
        return jdbc.sql(INSERT_PROGRAMME)
                        .param("tenant", TenantScope.require())
                        .param("id", programme.id())
                        .param("name", programme.name())
                        .param("zone", programme.zone().getId())
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    List<Site> sites() {
        return jdbc.sql(SITES)
                .param("tenant", TenantScope.require())
                .query((row, n) -> site(row))
                .list();
    }

    Optional<Site> site(UUID id) {
        return sites().stream().filter(site -> site.id().equals(id)).findFirst();
    }

    /** False when a site of that code exists. */
    boolean insertSite(Site site) {
        return jdbc.sql(INSERT_SITE)
                        .param("tenant", TenantScope.require())
                        .param("id", site.id())
                        .param("code", site.code())
                        .param("name", site.name())
                        .param("zone", site.zone().getId())
                        .update()
                == 1;
    }

    private static Site site(ResultSet row) throws SQLException {
        return new Site(
                row.getObject("id", UUID.class),
                row.getString("code"),
                row.getString("name"),
                ZoneId.of(row.getString("zone")),
                row.getObject("closed_on", LocalDate.class));
    }

    void renameSite(UUID id, String name) {
        onSite(RENAME_SITE, id).param("name", name).update();
    }

    /** Null opens it again. */
    void closeSite(UUID id, @Nullable LocalDate day) {
        onSite(CLOSE_SITE, id).param("day", day, Types.DATE).update();
    }

    private JdbcClient.StatementSpec onSite(String sql, UUID id) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("id", id);
    }
}
