package org.scrubline.casework.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.EventKind;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.MeasureKind;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The table of cases that holds the server's rules of a sheet and the device's twin together: the programme's own rules,
 * no outside source. Steps A, B and C are critical, the small letters are not. States: 1 to 5, S by supervisor, T after a
 * takeover, X not part, U not seen, - blank. {@code #1} in a tap stands for the event of the first tap.
 */
final class SheetTable {

    static final List<String> CODES = List.of("A", "B", "C", "d", "e", "f", "g");
    static final EventCatalogue CATALOGUE = new EventCatalogue(List.of(
            new EventKind("LEAK", "Leak left at the end", true, false),
            new EventKind("BLEEDING", "Bleeding beyond usual", false, false),
            new EventKind("OTHER", "Other", false, true),
            new EventKind(EventCatalogue.TAKEOVER, "Takeover", false, true)));

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final Map<String, Phase> PHASES = Map.of(
            "A",
            Phase.FLAP,
            "d",
            Phase.FLAP,
            "e",
            Phase.FLAP,
            "B",
            Phase.ENTRY,
            "C",
            Phase.CLOSURE,
            "f",
            Phase.CLOSURE,
            "g",
            Phase.CLOSURE);
    private static final Map<String, List<Measure>> MEASURES = Map.of(
            "B", List.of(measure("B-PIECES", MeasureKind.COUNT)),
            "C", List.of(measure("C-PIECES", MeasureKind.COUNT)),
            "e", List.of(measure("e-SIZE", MeasureKind.NUMBER)),
            "f", List.of(measure("f-OK", MeasureKind.YES_NO)));

    private SheetTable() {}

    /** One case: taps in order, and how the sheet must stand after the last. */
    record Row(String name, List<Map<String, String>> taps, JsonNode expected) {
        @Override
        public String toString() {
            return name;
        }
    }

    static List<Row> rows() {
        try (InputStream in = SheetTable.class.getResourceAsStream("/offline/sheet-table.json")) {
            List<Row> rows = new ArrayList<>();
            JSON.readTree(in)
                    .forEach(row -> rows.add(new Row(row.path("name").asString(), taps(row.path("taps")), row)));
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Rubric rubric() {
        List<String> sentences = List.of("one", "two", "three", "four", "five");
        return new Rubric(
                "TEST",
                "1.0",
                "Test",
                Family.TRABECULECTOMY,
                CODES.stream().map(code -> step(code, sentences)).toList());
    }

    private static Step step(String code, List<String> sentences) {
        return new Step(
                code,
                "Step " + code,
                PHASES.getOrDefault(code, Phase.FLAP),
                Character.isUpperCase(code.charAt(0)),
                "",
                MEASURES.getOrDefault(code, List.of()),
                sentences,
                List.of(),
                code.equals("d") ? List.of() : List.of("coach " + code),
                List.of(),
                false);
    }

    private static Measure measure(String code, MeasureKind kind) {
        return new Measure(code, "Measure " + code, kind, "", "", null, null, "", null, List.of());
    }

    private static List<Map<String, String>> taps(JsonNode rows) {
        List<Map<String, String>> taps = new ArrayList<>();
        for (JsonNode row : rows) {
            Map<String, String> fields = new LinkedHashMap<>();
            row.properties()
                    .forEach(field ->
                            fields.put(field.getKey(), text(field.getValue().asString())));
            taps.add(fields);
        }
        return taps;
    }

    private static String text(String written) {
        return written.matches("#\\d")
                ? TapEvent.id(SheetRun.SHEET, SheetRun.tapId(written.charAt(1) - '0'))
                        .toString()
                : written;
    }

    /** The states of a sheet as a row of letters. */
    static String letters(SheetImage sheet) {
        StringBuilder letters = new StringBuilder();
        CODES.forEach(code -> letters.append(letter(sheet.steps().get(code))));
        return letters.toString();
    }

    private static String letter(@Nullable String answer) {
        return switch (answer == null ? "" : answer) {
            case "" -> "-";
            case "BY_SUPERVISOR" -> "S";
            case "AFTER_TAKEOVER" -> "T";
            case "NOT_PART" -> "X";
            case "NOT_SEEN" -> "U";
            default -> answer == null ? "-" : answer;
        };
    }
}
