package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlagTests {

    @Test
    void everyPromptSaysHowOftenItIsRaisedWithoutCause() {
        assertThat(Flag.Kind.values())
                .allSatisfy(kind -> assertThat(kind.falseAlarms()).isNotBlank());
        assertThat(Flag.Kind.SCORING_SHIFTED.falseAlarms()).isEqualTo("1.5 % of steady supervisors");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "SCORES_DIFFER | 1.24 | Supervisor X scores lower than colleagues by 1.2 logits.",
                "SCORES_DIFFER | -1.24 | Supervisor X scores higher than colleagues by 1.2 logits.",
                "SCORING_SHIFTED | .55 | Supervisor X scores lower in the later half of the period than in the earlier, by 0.6 logits.",
                "SCORING_SHIFTED | -.45 | Supervisor X scores higher in the later half of the period than in the earlier, by 0.5 logits.",
                "ONE_OVERALL_IMPRESSION | 2 | Supervisor X moves all steps of a case together more than colleagues do.",
                "ONE_LEVEL_FOR_ALL | 5 | Supervisor X gives one level for all steps more often than the cases explain.",
                "FLATTER_THAN_EXPECTED | .8 | Scores of supervisor X vary less within a case than the steps explain.",
                "BELOW_EXPECTATION | 4.2 | Since about case c7 scores lie below what the curve led to expect.",
                "DROP | .71 | At case c7 the level lies 0.7 logits below an earlier one.",
                "STANDARD_FAR | .01 | At the present course the standard X is not in sight.",
                "STEP_SELDOM_SEEN | 2 | Step X was seen 2 times in the last 20 cases."
            })
    void everyPromptSaysWhoWhereAndHowMuch(Flag.Kind kind, double value, String sentence) {
        assertThat(new Flag(kind, "X", value, 1, "c7").sentence()).isEqualTo(sentence);
    }
}
