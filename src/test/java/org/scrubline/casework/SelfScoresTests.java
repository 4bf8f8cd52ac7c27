package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class SelfScoresTests {

    @Autowired
    private Cases cases;

    @Autowired
    private SelfScores selfScores;

    @Autowired
    private Sheets sheets;

    @Autowired
    private TransactionTemplate transaction;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private Clock clock;

    @Autowired
    private TestOrganisations organisations;

    private TestProgramme here;
    private UUID ended;

    @BeforeEach
    void logACase() {
        here = TestProgramme.open(organisations.open(), rubrics);
        ended = log(here.entry("K7-204", clock.instant()));
    }

    @Test
    void levelsReplaceTheEarlierOnes() {
        assertThat(levels()).isEmpty();
        assertThat(save(Map.of("TF01", 3, "TF02", 4)).orThrow()).isEqualTo(2);

        save(Map.of("TF02", 5)).orThrow();

        assertThat(levels()).isEqualTo(Map.of("TF02", 5));
    }

    @Test
    void aLevelOutsideTheScaleOrAStepOutsideTheRubricChangesNothing() {
        save(Map.of("TF01", 3)).orThrow();

        assertThat(reason(save(Map.of("TF01", 6)))).isEqualTo("refusal.self-score.level");
        assertThat(reason(save(Map.of("TF01", 0)))).isEqualTo("refusal.self-score.level");
        assertThat(reason(save(Map.of("DS01", 3)))).isEqualTo("refusal.self-score.level");
        assertThat(levels()).isEqualTo(Map.of("TF01", 3));
    }

    @Test
    void onceASupervisorHasSignedTheyStayAsTheyWere() {
        save(Map.of("TF01", 3)).orThrow();
        assertThat(in(() -> selfScores.locked(ended, here.trainee().personId())))
                .isFalse();
        sign();

        assertThat(in(() -> selfScores.locked(ended, here.trainee().personId())))
                .isTrue();
        assertThat(reason(save(Map.of("TF01", 5)))).isEqualTo("refusal.self-score.locked");
        assertThat(levels()).isEqualTo(Map.of("TF01", 3));
    }

    @Test
    void onlyATraineeOfTheCaseHasLevelsOfTheirOwn() {
        var peer = here.another("Hadi Nkolaris", Role.TRAINEE);

        assertThatThrownBy(() -> in(() -> selfScores.save(here.supervisor(), ended, Map.of("TF01", 3))))
                .isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> in(() -> selfScores.save(peer, ended, Map.of("TF01", 3))))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void aPlannedCaseHasNothingToScoreYet() {
        UUID planned = log(here.entry("K7-205", null));

        assertThatThrownBy(() -> in(() -> selfScores.save(here.trainee(), planned, Map.of("TF01", 3))))
                .isInstanceOf(NotFound.class);
    }

    private void sign() {
        UUID sheet =
                in(() -> cases.open(here.trainee(), ended)).requests().get(0).sheetId();
        in(() -> transaction.execute(status -> sheets.markSigned(sheet, 0)));
    }

    private UUID log(TestProgramme.Entry entry) {
        return in(() -> cases.log(here.trainee(), entry.done()).orThrow().id());
    }

    private Attempt<Integer> save(Map<String, Integer> levels) {
        return in(() -> selfScores.save(here.trainee(), ended, levels));
    }

    private Map<String, Integer> levels() {
        return in(() -> selfScores.of(ended, here.trainee().personId()));
    }

    private static String reason(Attempt<?> attempt) {
        return attempt.fold(done -> "done", reasons -> reasons.get(0).messageKey());
    }

    private <T> T in(Supplier<T> work) {
        return here.organisation().in(work);
    }
}
