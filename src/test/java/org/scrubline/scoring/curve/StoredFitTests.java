package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

class StoredFitTests {

    /** A fit is kept as JSON between nights; what comes back must smooth to the same bits. */
    @Test
    void aFitSurvivesStorage() {
        ScoreTable table = new SimulatedProgramme("", 5, 5, 4, 20).table();
        PopulationFit fit = new CompetencyModel(ModelSettings.standard(5)).fit(table);
        JsonMapper mapper = JsonMapper.shared();
        PopulationFit stored = mapper.readValue(mapper.writeValueAsString(fit), PopulationFit.class);
        assertThat(stored).isEqualTo(fit);
        ProcedureStandard standard = ProcedureStandard.usual(SimulatedProgramme.CRITICAL);
        assertThat(CompetencyModel.smoothAll(stored, table, standard))
                .isEqualTo(CompetencyModel.smoothAll(fit, table, standard));
        assertThat(stored.engineVersion()).isEqualTo(CompetencyModel.VERSION);
    }
}
