package org.scrubline.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.PatientIdentity.Hint;

/** Invented texts; what identifies a patient in free text is common practice, no source. */
public class PatientIdentityTests {

    /** Texts a surgeon writes, none of which points to a patient. */
    public static final List<String> HARMLESS = List.of(
            "",
            "Loosen the traction suture before the chamber is opened.",
            "0.2 mg/mL for 2.5 min, rinse 15 mL",
            "0.4 mL MMC 0.02 % 3 min, IOP 32/18",
            "IOP 32/18/12 mmHg on three readings",
            "10-0 nylon, two releasables, 1-2 mm from the limbus",
            "pressure 21, then 12345 as a count",
            "Misses the plane at 3 o'clock, twice at 12:30",
            "the master suture",
            "Level 3 on 4 of 7 steps; TF06 and TF07 next",
            "case K7-204, band C, axial length 26.4 mm",
            "Hospital policy asks for two checks",
            "Patient moved once; 3 stitches, 2 later",
            "MMC 0.3, A then B, then C");

    /** Texts that may, and the end of their message key. */
    public static final List<String> SUSPECT = List.of(
            "485 777 3456 came back|number",
            "A 12-34-56-78 on the list|number",
            "born in Tarnby|date",
            "DOB on the label|date",
            "seen 03/07/1951|date",
            "seen 3.7.51|date",
            "1951-07-03 on the label|date",
            "J.T. 03/07/1951 on the label|initials",
            "JT, 3.7.51|initials",
            "Mr Tarn did well|title",
            "spoke to Mrs. Ødegård|title",
            "Miss Tarn|title",
            "hospital number 123456|record",
            "MRN: 1234567|record",
            "Hosp no. A123456|record",
            "patient 4857773|record",
            "NHS number 485 777 3456|record",
            "943 476 5919 came back|health",
            "4010232137|health",
            "DOB 03/07/1951|birth",
            "born on 3 July 1951|birth",
            "date of birth: 1951-07-03|birth");

    @AfterEach
    void forgetTheWriter() {
        ReadAgain.end();
    }

    @Test
    void whatMayNameAPatientIsNoticedAndWhatDoesIsCertain() {
        for (String line : SUSPECT) {
            String[] parts = line.split("\\|");
            boolean certain = Set.of("record", "health", "birth").contains(parts[1]);
            assertThat(PatientIdentity.hints(parts[0])).as(line).containsExactly(new Hint(parts[1], certain));
        }
    }

    @Test
    void ordinaryRemarksAreLeftAlone() {
        assertThat(HARMLESS)
                .allSatisfy(
                        text -> assertThat(PatientIdentity.hints(text)).as(text).isEmpty());
    }

    /** Seeded measurements of every unit the rubrics use; none looks like a number of a patient. */
    @Test
    void measurementsOfTheTradeAreLeftAlone() {
        Random random = new Random(20261128);
        List<String> units = List.of("mm", "mL", "mg/mL", "min", "s", "%", "mmHg", "µm", "µg", "G", "weeks", "days");
        for (int i = 0; i < 2000; i++) {
            List<String> words = new ArrayList<>();
            for (int n = 1 + random.nextInt(4); n > 0; n--) {
                String number = random.nextBoolean()
                        ? Integer.toString(random.nextInt(1000))
                        : "%.2f".formatted(random.nextDouble() * 30);
                words.add(number + " " + units.get(random.nextInt(units.size())));
            }
            String text = String.join(", ", words);
            assertThat(PatientIdentity.hints(text)).as(text).isEmpty();
        }
    }

    /** Ten digits whose last does not check the others are only a long number. */
    @ParameterizedTest
    @ValueSource(strings = {"4857773456", "9434765910", "1234567890"})
    void aNumberThatDoesNotCheckOutIsNoHealthNumber(String number) {
        assertThat(PatientIdentity.hints(number)).containsExactly(new Hint("number", false));
    }

    @Test
    void theWriterIsAskedOnceAboutATextAndDecides() {
        Set<String> asked = new LinkedHashSet<>();
        ReadAgain.begin(asked);
        assertThat(refused("Mr Tarn did well")).containsExactly("refusal.identity.title");
        assertThat(refused("Mr Tarn did well")).isEmpty();
        assertThat(refused("Mr Tarn did better")).as("another text").containsExactly("refusal.identity.title");
        assertThat(refused("Mr Tarn, 12345678")).containsExactly("refusal.identity.several");
        assertThat(asked).hasSize(3).allMatch(hash -> hash.matches("[0-9a-f]{64}"));
    }

    @ParameterizedTest
    @CsvSource({"hospital number 123456, record", "943 476 5919, health", "DOB 03/07/1951, birth"})
    void whatIsCertainIsRefusedHoweverOftenItIsSent(String text, String kind) {
        ReadAgain.begin(new LinkedHashSet<>());
        assertThat(refused(text)).containsExactly("refusal.identity." + kind);
        assertThat(refused(text)).containsExactly("refusal.identity." + kind);
    }

    @Test
    void nobodyIsAskedOutsideARequestButWhatIsCertainIsRefusedThereToo() {
        assertThat(refused("Mr Tarn did well")).isEmpty();
        assertThat(refused("DOB 03/07/1951")).containsExactly("refusal.identity.birth");
    }

    private static List<String> refused(String text) {
        return FreeText.narrative("strength", text, 1000).stream()
                .map(Refusal::messageKey)
                .toList();
    }
}
