package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class InitialsTests {

    @Test
    void aNameWithoutItsTitleIsTheFirstLetters() {
        assertThat(initials("Dr Ottilie Brannock", "Ansel Verrin", "Prof. Ysolde Marr Tiven"))
                .containsExactly("O. B.", "A. V.", "Y. M. T.");
    }

    @Test
    void twoWithTheSameLettersAreToldApartByAsFewMoreAsItTakes() {
        assertThat(initials("Orla Brannock", "Ottilie Brevard", "Ansel Verrin"))
                .containsExactly("O. Bra.", "O. Bre.", "A. V.");
    }

    @Test
    void ofTwoWithOneNameEachHasANumber() {
        assertThat(initials("Ansel Verrin", "Dr Ottilie Brannock", "Ansel Verrin"))
                .containsExactly("A. V. 1", "O. B.", "A. V. 2");
    }

    @Test
    void aSingleNameAndALetterBeyondTheFirstPlaneStayWhole() {
        assertThat(initials("Verrin", "𝒜nsel 𝒱errin")).containsExactly("V.", "𝒜. 𝒱.");
        assertThat(initials()).isEmpty();
    }

    private static List<String> initials(String... names) {
        List<Option> people = IntStream.range(0, names.length)
                .mapToObj(n -> Option.of(n, names[n]))
                .toList();
        assertThat(Initials.of(people))
                .extracting(Option::value)
                .isEqualTo(people.stream().map(Option::value).toList());
        return Initials.of(people).stream().map(Option::label).toList();
    }
}
