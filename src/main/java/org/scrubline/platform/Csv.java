package org.scrubline.platform;

import java.util.List;
import java.util.stream.Collectors;

/** Lines of comma-separated values as RFC 4180 describes them, safe to open in a spreadsheet. */
public final class Csv {

    private static final String FORMULA = "=+-@\t\r";

    private Csv() {}

    /** One record with its line end. */
    public static String line(List<String> cells) {
        return cells.stream().map(Csv::cell).collect(Collectors.joining(",", "", "\r\n"));
    }

    /** A cell a spreadsheet would calculate gets an apostrophe in front, which it shows as text. */
    private static String cell(String text) {
        String safe = !text.isEmpty() && FORMULA.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
        return safe.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r')
                ? '"' + safe.replace("\"", "\"\"") + '"'
                : safe;
    }
}
