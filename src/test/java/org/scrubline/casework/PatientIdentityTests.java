package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Invented texts; what identifies a patient in free text is common practice, no source. */
class PatientIdentityTests {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "hospital number 123456|identity.number",
                "485 777 3456 came back|identity.number",
                "A 12-34-56-78 on the list|identity.number",
                "born in Tarnby|identity.date",
                "DOB on the label|identity.date",
                "seen 03/07/1951|identity.date",
                "seen 3.7.51|identity.date",
                "1951-07-03 on the label|identity.date",
                "Mr Tarn did well|identity.title",
                "spoke to Mrs. Ødegård|identity.title",
                "Miss Tarn|identity.title"
            })
    void whatMayNameAPatientIsNoticed(String text, String hint) {
        assertThat(PatientIdentity.hints(text)).containsExactly(hint);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "Loosen the traction suture before the chamber is opened.",
                "0.2 mg/mL for 2.5 min, rinse 15 mL",
                "pressure 21, then 12345 as a count",
                "Misses the plane at 3 o'clock, twice at 12:30",
                "the master suture"
            })
    void ordinaryRemarksAreLeftAlone(String text) {
        assertThat(PatientIdentity.hints(text)).isEmpty();
    }
}
