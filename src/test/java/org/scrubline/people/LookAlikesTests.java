package org.scrubline.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;

/** Unicode Technical Standard 39 (confusables, restriction levels), by its own library; the examples are from memory. */
class LookAlikesTests {

    private static final List<String> THERE = List.of("Anna Corner", "Fenna Hallinor", "José Paolo", "Иван Петров");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "José",
                "Søren Ærø",
                "李",
                "李 明 David",
                "Ólafur Þór",
                "Иван Иванов",
                "Αλέξης",
                "Nguyễn Thị Ánh",
                "O’Brien-Smith",
                "שָׁלוֹם",
                "محمّد",
                "Иван Petrov",
                "Anna Comer",
                "Fenna Hallinor",
                "fenna hallinor"
            })
    void namesOfPeoplePass(String name) {
        assertThat(LookAlikes.check("name", FreeText.tidy(name), THERE)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "Fenna\u202eronillaH,unseen",
        "Fenna\u2066Hallinor,unseen",
        "Fen\u200bna Hallinor,unseen",
        "Fen\u200dna Hallinor,unseen",
        "Fenna\u00adHallinor,unseen",
        "Fenna\u3164Hallinor,unseen",
        "\ufeffFenna,unseen",
        "Fenn\u0430 Hallinor,scripts",
        "F\u0435nna Hallinor,scripts",
        "Hallin\u03bfr,scripts"
    })
    void namesWithSignsNobodySeesOrOfMixedScriptsAreRefused(String name, String why) {
        assertThat(LookAlikes.check("name", FreeText.tidy(name), List.of()))
                .map(Refusal::messageKey)
                .contains("refusal.name." + why);
    }

    @Test
    void aNameOfAnotherScriptThatLooksLikeOneThereIsIsRefused() {
        String cyrillic = "\u0410\u0441\u0435 \u0421\u043e\u0440";
        assertThat(LookAlikes.check("name", cyrillic, List.of("Ace Cop")))
                .map(Refusal::messageKey)
                .contains("refusal.name.alike");
        assertThat(LookAlikes.check("name", cyrillic, THERE)).isEmpty();
    }

    @Test
    void tenThousandMarksOnOneLetterAreRefusedAtOnceAndFourAreNot() {
        assertThat(LookAlikes.check("name", "a" + "\u0331".repeat(10_000), THERE))
                .map(Refusal::messageKey)
                .contains("refusal.name.piled");
        assertThat(LookAlikes.check("name", "a" + "\u0331".repeat(4), THERE)).isEmpty();
    }
}
