package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Given a fit, a trainee's curve needs no score of anybody else: it is the same to the last bit without them. */
class OwnScoresTests {

    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(SimulatedProgramme.CRITICAL);

    /** Two groups that share nobody, fitted before their newest third: some supervisors and trainees are unknown to the fit. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15})
    void makeTheCurveOfTheWholeTable(long seed) {
        List<ObservedScore> scores = new ArrayList<>(new SimulatedProgramme("a", seed, 5, 4, 18).scores);
        scores.addAll(new SimulatedProgramme("b", seed + 100, 3, 3, 12).scores);
        PopulationFit fit = new CompetencyModel(ModelSettings.standard(SimulatedProgramme.LEVELS))
                .fit(table(scores.subList(0, scores.size() * 2 / 3), List.of()));
        ScoreTable all = table(scores, List.of());
        for (String trainee : all.trainees()) {
            ScoreTable own = table(
                    scores.stream()
                            .filter(score -> score.trainee().equals(trainee))
                            .toList(),
                    all.steps());
            assertThat(own.hasOneLevelSupervisor()).isFalse();
            assertThat(CompetencyModel.smooth(fit, own, trainee, STANDARD))
                    .isEqualTo(CompetencyModel.smooth(fit, all, trainee, STANDARD));
            assertThat(CompetencyModel.gaps(fit, own, trainee, STANDARD))
                    .isEqualTo(CompetencyModel.gaps(fit, all, trainee, STANDARD));
        }
    }

    /** The exception: whether a supervisor gives one level only is seen in what they give to others. */
    @Test
    void sayWhereTheScoresOfOthersMatter() {
        List<ObservedScore> mild = List.of(score("v1", 5), score("v2", 3));
        assertThat(table(mild, List.of()).hasOneLevelSupervisor()).isTrue();
        List<ObservedScore> harsh = List.of(score("v1", 1), score("v2", 3));
        assertThat(table(harsh, List.of()).hasOneLevelSupervisor()).isTrue();
        List<ObservedScore> plain = List.of(score("v1", 5), score("v1", 4), score("v2", 3));
        assertThat(table(plain, List.of()).hasOneLevelSupervisor()).isFalse();
        assertThat(table(List.of(), List.of()).hasOneLevelSupervisor()).isFalse();
    }

    private static ObservedScore score(String supervisor, int level) {
        CaseContext context = new CaseContext("case " + supervisor + level, 0, 0, 0, List.of());
        return new ObservedScore("sheet " + supervisor + level, "t", supervisor, context, "A", level);
    }

    private static ScoreTable table(List<ObservedScore> scores, List<String> steps) {
        return ScoreTable.of(SimulatedProgramme.LEVELS, steps, scores);
    }
}
