package org.scrubline.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Quoting by the rules of RFC 4180, section 2; the cells a spreadsheet calculates by OWASP's "CSV Injection", from memory. */
class CsvTests {

    @Test
    void plainCellsStandAsTheyAre() {
        assertThat(Csv.line(List.of("7", "Fenna Hallinor", ""))).isEqualTo("7,Fenna Hallinor,\r\n");
    }

    @Test
    void commasQuotesAndLineEndsAreQuoted() {
        assertThat(Csv.line(List.of("a,b", "say \"so\"", "one\ntwo")))
                .isEqualTo("\"a,b\",\"say \"\"so\"\"\",\"one\ntwo\"\r\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"})
    void aCellASpreadsheetWouldCalculateBecomesText(String cell) {
        assertThat(Csv.line(List.of(cell))).matches(line -> line.startsWith("'" + cell) || line.startsWith("\"'"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"a=1", "2026-01-05", "K7-204"})
    void theseSignsInsideACellAreLeftAlone(String cell) {
        assertThat(Csv.line(List.of(cell))).isEqualTo(cell + "\r\n");
    }
}
