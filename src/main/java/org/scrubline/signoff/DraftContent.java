package org.scrubline.signoff;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.casework.RecordedEvent;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.signoff.SheetContent.EventLine;
import org.scrubline.signoff.SheetContent.StepLine;

/** A sheet as a signed version says, for its next version to start from. */
final class DraftContent {

    private DraftContent() {}

    /**
     * The sheet with what was signed on it.
     *
     * @param sheet the sheet as it is kept; events it has already keep their ids
     * @param at when events are put back that it has no more
     */
    static Sheet of(SignedSheet signed, Sheet sheet, Instant at) {
        SheetContent content = SignedContent.read(signed.content()).reviewed();
        return new Sheet(
                sheet.id(),
                sheet.caseId(),
                sheet.traineeId(),
                sheet.scorerId(),
                sheet.rubricVersionId(),
                sheet.state(),
                content.confirmedPart(),
                content.givenSupervision(),
                steps(content),
                inBulk(content),
                measures(content),
                events(content.events(), sheet.events(), at),
                content.strength(),
                content.nextStep(),
                sheet.openedAt(),
                content.firstScoredAt(),
                sheet.lockVersion(),
                sheet.reopening());
    }

    private static Map<String, StepState> steps(SheetContent content) {
        Map<String, StepState> steps = new LinkedHashMap<>();
        content.steps().forEach(step -> steps.put(step.code(), step.said()));
        return steps;
    }

    private static Set<String> inBulk(SheetContent content) {
        return content.steps().stream()
                .filter(step -> step.inBulk() != null)
                .map(StepLine::code)
                .collect(Collectors.toSet());
    }

    private static Map<String, BigDecimal> measures(SheetContent content) {
        Map<String, BigDecimal> measures = new LinkedHashMap<>();
        content.measures().forEach(measure -> measures.put(measure.code(), new BigDecimal(measure.value())));
        return measures;
    }

    /** In the order they were signed: those put back come after each other by a microsecond. */
    private static List<RecordedEvent> events(List<EventLine> signed, List<RecordedEvent> kept, Instant at) {
        List<RecordedEvent> left = new ArrayList<>(kept);
        List<RecordedEvent> events = new ArrayList<>();
        for (EventLine line : signed) {
            RecordedEvent event = left.stream()
                    .filter(one -> same(line, one))
                    .findFirst()
                    .orElseGet(() -> recorded(line, at.plusNanos(1000L * events.size())));
            left.remove(event);
            events.add(event);
        }
        return events;
    }

    private static boolean same(EventLine line, RecordedEvent event) {
        return line.code().equals(event.eventCode())
                && Objects.equals(line.step(), event.stepCode())
                && line.reason() == event.reason()
                && line.action().equals(event.actionTaken());
    }

    private static RecordedEvent recorded(EventLine line, Instant at) {
        return new RecordedEvent(UUID.randomUUID(), line.code(), line.step(), line.reason(), line.action(), at);
    }
}
