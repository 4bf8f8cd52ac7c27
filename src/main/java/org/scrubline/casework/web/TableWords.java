package org.scrubline.casework.web;

import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.scrubline.casework.Part;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.Verdict;
import org.scrubline.rubric.TakeoverReason;
import org.springframework.stereotype.Component;

/** The message patterns a device needs to say by itself what the server would say of a sheet. */
@Component
class TableWords {

    private static final List<String> KEYS = List.of(
            "components.verdict.progress",
            "sheet.running",
            "sheet.running.open",
            "sheet.role",
            "sheet.pieces",
            "sheet.cause.AFTER_TAKEOVER",
            "sheet.event.line",
            "sheet.state.BY_SUPERVISOR",
            "sheet.state.NOT_PART",
            "sheet.state.NOT_SEEN",
            "verdict.reason.low",
            "verdict.reason.event",
            "verdict.reason.open",
            "verdict.reason.independent",
            "verdict.reason.three",
            "verdict.reason.one",
            "verdict.reason.threes",
            "sheet.refusal.step",
            "sheet.refusal.taken-over",
            "sheet.refusal.no-takeover",
            "sheet.refusal.bulk-level",
            "sheet.refusal.measure",
            "sheet.refusal.yes-no",
            "sheet.refusal.count",
            "sheet.refusal.range",
            "sheet.refusal.decimals",
            "sheet.refusal.event",
            "sheet.refusal.events",
            "sheet.refusal.event-gone",
            "sheet.refusal.event-words",
            "sheet.refusal.takeover-step",
            "sheet.refusal.takeover-reason",
            "sheet.refusal.reason-without-takeover",
            "sheet.refusal.answer",
            "sheet.refusal.number",
            "sheet.refusal.choice.part",
            "sheet.refusal.choice.supervision",
            "sheet.refusal.choice.rest",
            "sheet.refusal.choice.event.reason",
            "refusal.text.characters",
            "refusal.text.length");

    private final SheetWords words;

    TableWords(SheetWords words) {
        this.words = words;
    }

    /** Pattern by key, its places still open. */
    Map<String, String> patterns() {
        Map<String, String> patterns = new LinkedHashMap<>();
        KEYS.forEach(key -> patterns.put(key, words.pattern(key)));
        Stream.of(
                        keys("verdict.", Verdict.values()),
                        keys("sheet.part.", Part.values()),
                        keys("sheet.supervision.", Supervision.values()),
                        keys("sheet.reason.", TakeoverReason.values()))
                .flatMap(Collection::stream)
                .forEach(key -> patterns.put(key, words.pattern(key)));
        return patterns;
    }

    private static List<String> keys(String beginning, Enum<?>[] values) {
        return Arrays.stream(values).map(value -> beginning + value.name()).toList();
    }
}
