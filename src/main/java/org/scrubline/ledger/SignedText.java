package org.scrubline.ledger;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.scrubline.ledger.RecordCheck.Contradiction;
import org.scrubline.platform.CanonicalJson;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A row with a canonical text, its hash, and columns that repeat parts of it. Reads the text as a tree, so that text of
 * another version of its form is compared as far as it goes.
 */
public record SignedText(String table, JsonNode row, String text, JsonNode content) {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /** The one row of a record. */
    public static SignedText of(String table, JsonNode row) {
        String text = row.path("content").asString("");
        return new SignedText(table, row, text, tree(text));
    }

    /** Text that was changed into no JSON at all says nothing; its hash is found wrong. */
    private static JsonNode tree(String text) {
        try {
            return MAPPER.readTree(text);
        } catch (JacksonException noJson) {
            return MAPPER.createObjectNode();
        }
    }

    /** Whether the text is the one that was hashed. */
    public boolean hashed() {
        return CanonicalJson.sha256(text).equals(row.path("content_hash").asString(""));
    }

    /**
     * What does not agree; the hash alone when that is wrong already.
     *
     * @param places where the text says what a column repeats
     */
    public List<Contradiction> against(Map<String, String> places) {
        if (!hashed()) {
            return List.of(new Contradiction(table, "content_hash"));
        }
        List<Contradiction> wrong = new ArrayList<>();
        places.forEach((column, place) -> {
            JsonNode said = content.at(place);
            if (!said.isMissingNode() && !same(row.path(column), said)) {
                wrong.add(new Contradiction(table, column));
            }
        });
        return wrong;
    }

    private static boolean same(JsonNode column, JsonNode said) {
        String is = column.isNull() ? "" : column.asString("");
        String was = said.isNull() ? "" : said.asString("");
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
