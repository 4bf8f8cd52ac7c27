package org.scrubline.progress;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.Estimation;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Keeps population fits; adds and reads, never changes. */
@Repository
class PopulationFitStore {

    private final JdbcClient jdbc;

    PopulationFitStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The newest fit of this engine's version. */
    Optional<StoredFit> newest(UUID programmeId, String procedureCode) {
        return jdbc.sql("""
                        select content, data_until, sheets, fitted_at
                        from population_fit
                        where tenant_id = :tenant
                          and programme_id = :programme
                          and procedure_code = :procedure
                          and engine_version = :engine
                        order by fitted_at desc, id
                        limit 1
                        """)
                .param("tenant", TenantScope.require())
                .param("programme", programmeId)
                .param("procedure", procedureCode)
                .param("engine", CompetencyModel.VERSION)
                .query((row, n) -> stored(row))
                .optional();
    }

    /** The newest fit of this engine's version made until an instant. */
    Optional<StoredFit.Known> newest(UUID programmeId, String procedureCode, Instant knownAt) {
        return jdbc.sql("""
                        select id, content, data_until, sheets, fitted_at
                        from population_fit
                        where tenant_id = :tenant
                          and programme_id = :programme
                          and procedure_code = :procedure
                          and engine_version = :engine
                          and fitted_at <= :knownAt
                        order by fitted_at desc, id
                        limit 1
                        """)
                .param("tenant", TenantScope.require())
                .param("programme", programmeId)
                .param("procedure", procedureCode)
                .param("engine", CompetencyModel.VERSION)
                .param("knownAt", knownAt.atOffset(ZoneOffset.UTC))
                .query((row, n) -> new StoredFit.Known(row.getObject("id", UUID.class), stored(row)))
                .optional();
    }

    private static StoredFit stored(ResultSet row) throws SQLException {
        return new StoredFit(
                FitJson.read(row.getString("content")),
                row.getObject("data_until", OffsetDateTime.class).toInstant(),
                row.getInt("sheets"),
                row.getObject("fitted_at", OffsetDateTime.class).toInstant());
    }

    /** What the newest fit of this engine's version saw. */
    Optional<StoredFit.Seen> seen(UUID programmeId, String procedureCode) {
        return jdbc.sql("""
                        select data_until, sheets
                        from population_fit
                        where tenant_id = :tenant
                          and programme_id = :programme
                          and procedure_code = :procedure
                          and engine_version = :engine
                        order by fitted_at desc, id
                        limit 1
                        """)
                .param("tenant", TenantScope.require())
                .param("programme", programmeId)
                .param("procedure", procedureCode)
                .param("engine", CompetencyModel.VERSION)
                .query((row, n) -> new StoredFit.Seen(
                        row.getObject("data_until", OffsetDateTime.class).toInstant(), row.getInt("sheets")))
                .optional();
    }

    /** Gives the id of the new row. */
    UUID add(UUID programmeId, String procedureCode, StoredFit stored) {
        UUID id = UUID.randomUUID();
        jdbc.sql("""
                        insert into population_fit (tenant_id, id, programme_id, procedure_code, engine_version,
                            data_until, sheets, own_fit, content, fitted_at)
                        values (:tenant, :id, :programme, :procedure, :engine,
                            :until, :sheets, :own, :content, :fitted)
                        """)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("programme", programmeId)
                .param("procedure", procedureCode)
                .param("engine", stored.fit().engineVersion())
                .param("until", stored.dataUntil().atOffset(ZoneOffset.UTC))
                .param("sheets", stored.sheets())
                .param("own", stored.fit().estimation() == Estimation.ALL)
                .param("content", FitJson.write(stored.fit()))
                .param("fitted", stored.fittedAt().atOffset(ZoneOffset.UTC))
                .update();
        return id;
    }
}
