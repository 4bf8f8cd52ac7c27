package org.scrubline.progress;

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
                .query((row, n) -> new StoredFit(
                        FitJson.read(row.getString("content")),
                        row.getObject("data_until", OffsetDateTime.class).toInstant(),
                        row.getInt("sheets"),
                        row.getObject("fitted_at", OffsetDateTime.class).toInstant()))
                .optional();
    }

    void add(UUID id, UUID programmeId, String procedureCode, StoredFit stored) {
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
    }
}
