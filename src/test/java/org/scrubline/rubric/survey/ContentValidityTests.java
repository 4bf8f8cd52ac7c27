package org.scrubline.rubric.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ContentValidityTests {

    /**
     * Twelve items rated by six experts, PMC7253559, table 4: items 6 and 9 have an I-CVI of 0.83 and all others 1.00;
     * the S-CVI/Ave is 0.97.
     */
    private static final String PUBLISHED = """
            4 4 4 4 4 4
            4 3 4 4 3 4
            4 4 4 4 4 4
            4 4 4 4 4 4
            3 4 4 4 4 4
            2 3 4 3 3 4
            4 4 4 4 4 4
            4 4 4 4 4 4
            3 3 4 2 3 4
            4 4 4 3 4 4
            4 4 4 3 4 4
            4 4 4 3 4 4
            """;

    @Test
    void aPublishedTableIsCountedAsItsAuthorsDid() {
        ContentValidity validity = of(PUBLISHED);

        assertThat(validity.experts()).isEqualTo(6);
        assertThat(validity.known()).isTrue();
        for (ContentValidity.Share share : validity.steps()) {
            boolean lower = share.step().equals("6") || share.step().equals("9");
            assertThat(share.value()).isCloseTo(lower ? 0.83 : 1.00, within(0.005));
            assertThat(share.relevant()).isEqualTo(lower ? 5 : 6);
        }
        assertThat(validity.average()).isCloseTo(0.97, within(0.005));
    }

    @Test
    void twoExpertsSayTooLittleAndThreeEnough() {
        assertThat(of("4 4\n3 1\n").known()).isFalse();
        assertThat(of("4 4\n3 1\n").steps()).isEmpty();
        assertThat(of("4 4\n3 1\n").average()).isNaN();
        assertThat(of("4 4 2\n3 1 1\n").steps())
                .extracting(ContentValidity.Share::relevant)
                .containsExactly(2, 1);
    }

    @ParameterizedTest
    @CsvSource({
        "4, 5, 80, true",
        "3, 4, 80, false",
        "7, 9, 78, false",
        "7, 9, 77, true",
        "0, 3, 50, false",
        "3, 3, 100, true"
    })
    void theLineIsReachedByCountsAndNotByARoundedShare(int relevant, int experts, int line, boolean reached) {
        assertThat(new ContentValidity.Share("A1", relevant, experts).reaches(line))
                .isEqualTo(reached);
    }

    /** One line a step, one column an expert. */
    private static ContentValidity of(String table) {
        List<String[]> rows = table.lines().map(line -> line.split(" ", -1)).toList();
        List<Map<String, Integer>> ratings = new ArrayList<>();
        for (int expert = 0; expert < rows.get(0).length; expert++) {
            Map<String, Integer> one = new HashMap<>();
            for (int step = 0; step < rows.size(); step++) {
                one.put(Integer.toString(step + 1), Integer.valueOf(rows.get(step)[expert]));
            }
            ratings.add(one);
        }
        return ContentValidity.of(
                IntStream.rangeClosed(1, rows.size())
                        .mapToObj(Integer::toString)
                        .toList(),
                ratings);
    }
}
