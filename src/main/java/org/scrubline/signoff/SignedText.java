package org.scrubline.signoff;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import org.scrubline.ledger.RecordCheck.Contradiction;
import tools.jackson.databind.JsonNode;

/** Compares a signed text, read as a tree, with what stands beside it. */
final class SignedText {

    private SignedText() {}

    /**
     * Columns that do not say what the text says.
     *
     * @param places where the text says what a column repeats, a JSON pointer by column
     */
    static List<Contradiction> columns(String table, Map<String, String> places, JsonNode row, JsonNode content) {
        return places.entrySet().stream()
                .filter(place -> !content.at(place.getValue()).isMissingNode())
                .filter(place -> !same(row.path(place.getKey()), content.at(place.getValue())))
                .map(place -> new Contradiction(table, place.getKey()))
                .toList();
    }

    private static boolean same(JsonNode column, JsonNode said) {
        String is = column.asString("");
        String was = said.asString("");
        return is.equals(was) || (is.contains("T") && instant(is).equals(instant(was)));
    }

    /** The database writes +00:00 where the signed text has Z. */
    private static String instant(String text) {
        try {
            return OffsetDateTime.parse(text).toInstant().toString();
        } catch (DateTimeParseException noInstant) {
            return text;
        }
    }
}
