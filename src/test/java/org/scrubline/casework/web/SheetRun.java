package org.scrubline.casework.web;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseState;
import org.scrubline.casework.EditorInMemory;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Part;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;
import tools.jackson.databind.json.JsonMapper;

/** One sheet followed tap by tap through the server's own rules, in memory. */
final class SheetRun {

    static final UUID SHEET = UUID.fromString("5e3a7c10-0000-4000-8000-000000000001");

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final TapAnswers answers;
    private final SheetWords words;
    private Draft draft;

    /** What one tap led to: how the sheet stands, and why the tap was refused if it was. */
    record Said(TapAnswer answer, List<String> keys, List<String> reasons) {}

    SheetRun(Rubric rubric, EventCatalogue catalogue, boolean converted, TapAnswers answers, SheetWords words) {
        this.answers = answers;
        this.words = words;
        this.draft = new Draft(
                EditorInMemory.blank(SHEET, rubric, converted),
                operation(converted),
                "your trainee of M-417",
                Part.WHOLE_CASE,
                rubric,
                catalogue);
    }

    static UUID tapId(int number) {
        return UUID.fromString("00000000-0000-4000-8000-%012d".formatted(number));
    }

    Draft draft() {
        return draft;
    }

    Said tap(int number, Map<String, String> fields) {
        SheetReading reading = draft.read(new SheetInput(fields), TapEvent.id(SHEET, tapId(number)));
        List<Refusal> refusals = new ArrayList<>(reading.refusals());
        if (refusals.isEmpty()) {
            boolean converted = draft.surgicalCase().convertedTo() != null;
            draft = EditorInMemory.apply(draft.rubric(), draft.catalogue(), converted, draft.sheet(), reading.change())
                    .fold(draft::with, reasons -> keep(reasons, refusals));
        }
        return new Said(
                answers.of(tapId(number), draft, reading),
                refusals.stream().map(Refusal::messageKey).toList(),
                refusals.stream().map(words::say).distinct().toList());
    }

    private Draft keep(List<Refusal> reasons, List<Refusal> refusals) {
        refusals.addAll(reasons);
        return draft;
    }

    /** What a device is given and what it must say after each tap, as one JSON text. */
    static String transcript(Draft start, TableWords words, List<Map<String, String>> taps, List<Said> said) {
        Map<String, @Nullable Object> all = new LinkedHashMap<>();
        all.put("facts", SheetFacts.of(start, words.patterns()));
        all.put("start", SheetImage.of(start.sheet()));
        all.put("taps", taps);
        all.put(
                "said",
                said.stream()
                        .map(one -> Map.of("answer", one.answer(), "reasons", one.reasons()))
                        .toList());
        return JSON.writeValueAsString(all);
    }

    Sheet sheet() {
        return draft.sheet();
    }

    private static SurgicalCase operation(boolean converted) {
        Instant at = Instant.parse("2026-03-12T18:40:00Z");
        return new SurgicalCase(
                SHEET,
                SHEET,
                SHEET,
                "M-417",
                "TEST",
                Eye.LEFT,
                CaseState.ENDED,
                Supervision.SCRUBBED,
                Band.B,
                List.of(),
                false,
                at,
                ZoneId.of("Europe/London"),
                converted ? "TRAB_FORNIX" : null,
                null,
                null,
                SHEET,
                at,
                null,
                0);
    }
}
