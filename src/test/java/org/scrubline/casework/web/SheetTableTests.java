package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.scrubline.casework.CaseVerdict;
import org.scrubline.support.ScrublineTest;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;

/** The server's side of the table that the device's twin is held to in {@link SheetTwinIT}. */
@ScrublineTest
class SheetTableTests {

    @Autowired
    TapAnswers answers;

    @Autowired
    SheetWords words;

    static List<SheetTable.Row> rows() {
        return SheetTable.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theTableHoldsOnTheServer(SheetTable.Row row) {
        SheetRun run = new SheetRun(SheetTable.rubric(), SheetTable.CATALOGUE, false, answers, words);
        List<String> refused = List.of();
        for (int i = 0; i < row.taps().size(); i++) {
            refused = run.tap(i + 1, row.taps().get(i)).keys();
        }
        SheetImage image = SheetImage.of(run.sheet());
        JsonNode expected = row.expected();
        assertThat(SheetTable.letters(image)).isEqualTo(expected.path("states").asString());
        assertThat(CaseVerdict.of(SheetTable.rubric(), SheetTable.CATALOGUE, run.sheet())
                        .verdict()
                        .name())
                .isEqualTo(expected.path("verdict").asString());
        assertThat(refused).isEqualTo(texts(expected.path("refused")));
        if (expected.has("role")) {
            assertThat(image.part() + " " + image.supervision())
                    .isEqualTo(expected.path("role").asString());
        }
        if (expected.has("measures")) {
            Map<String, String> measures = new TreeMap<>();
            expected.path("measures")
                    .properties()
                    .forEach(one -> measures.put(one.getKey(), one.getValue().asString()));
            assertThat(image.measures()).isEqualTo(measures);
        }
        assertThat(image.strength()).isEqualTo(expected.path("strength").asString(""));
    }

    private static List<String> texts(JsonNode list) {
        List<String> texts = new ArrayList<>();
        list.forEach(one -> texts.add(one.asString()));
        return texts;
    }
}
