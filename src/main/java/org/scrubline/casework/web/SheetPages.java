package org.scrubline.casework.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Part;
import org.scrubline.casework.RecordedEvent;
import org.scrubline.casework.Reopening;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.rubric.TakeoverReason;
import org.springframework.stereotype.Component;

/** Puts the score sheet's page together from a draft, what was typed and what is wrong with it. */
@Component
class SheetPages {

    private final SheetWords words;
    private final StepViews steps;
    private final Foot foot;

    SheetPages(SheetWords words, StepViews steps, Foot foot) {
        this.words = words;
        this.steps = steps;
        this.foot = foot;
    }

    /**
     * The page.
     *
     * @param shown what stands in the fields
     * @param errors sentence by field
     */
    SheetPage of(Draft draft, SheetInput shown, Map<String, String> errors) {
        Sheet sheet = draft.sheet();
        Suggestions suggestions = new Suggestions(draft.rubric(), sheet);
        String trainee = draft.traineeName();
        return new SheetPage(
                sheet.id().toString(),
                sheet.editorId().toString(),
                "/sheets/" + sheet.id(),
                sheet.lockVersion(),
                words.say("sheet.title", trainee),
                facts(draft, trainee),
                role(draft, trainee, shown, errors),
                steps.of(draft, shown, errors),
                events(draft, shown, errors),
                new SheetPage.Feedback(
                        "strength", shown.text("strength"), suggestions.strengths(), errors.get("strength")),
                new SheetPage.Feedback(
                        "nextStep", shown.text("nextStep"), suggestions.nextSteps(), errors.get("nextStep")),
                foot.of(draft),
                reopened(sheet.reopening()));
    }

    private @Nullable String reopened(@Nullable Reopening reopening) {
        return reopening == null
                ? null
                : words.say(
                        "sheet.reopened.text", reopening.versionNo(), reopening.versionNo() - 1, reopening.reason());
    }

    private List<SheetPage.Fact> facts(Draft draft, String trainee) {
        SurgicalCase surgicalCase = draft.surgicalCase();
        return Stream.of(
                        new SheetPage.Fact(trainee, null),
                        new SheetPage.Fact(null, words.say("sheet.case", surgicalCase.reference())),
                        new SheetPage.Fact(null, draft.rubric().title()),
                        new SheetPage.Fact(
                                null,
                                words.say("sheet.eye." + surgicalCase.eye().name())),
                        new SheetPage.Fact(
                                null,
                                words.say("sheet.band", surgicalCase.band().name())),
                        new SheetPage.Fact(null, words.endOf(surgicalCase)))
                .filter(fact -> fact.value() != null || !"".equals(fact.text()))
                .toList();
    }

    private SheetPage.Role role(Draft draft, String trainee, SheetInput shown, Map<String, String> errors) {
        Part part = draft.sheet().confirmedPart();
        Supervision supervision = draft.sheet().givenSupervision();
        String error = errors.getOrDefault("part", errors.get("supervision"));
        return new SheetPage.Role(
                part == null || supervision == null ? null : roleSaid(trainee, part, supervision),
                roleSaid(trainee, draft.claimedPart(), draft.surgicalCase().plannedSupervision()),
                options("sheet.part.", Part.values()),
                List.of(shown.text("part")),
                options("sheet.supervision.", Supervision.values()),
                List.of(shown.text("supervision")),
                error);
    }

    /** The trainee's part and the supervision as one sentence. */
    String roleSaid(String trainee, Part part, Supervision supervision) {
        return words.say(
                "sheet.role",
                trainee,
                words.say("sheet.part." + part.name()),
                words.say("sheet.supervision." + supervision.name()));
    }

    private SheetPage.Events events(Draft draft, SheetInput shown, Map<String, String> errors) {
        List<SheetPage.Option> places = new ArrayList<>();
        places.add(new SheetPage.Option("", words.say("sheet.event.no-step"), null));
        draft.rubric().steps().forEach(step -> places.add(new SheetPage.Option(step.code(), step.name(), null)));
        String error = errors.entrySet().stream()
                .filter(entry -> entry.getKey().startsWith("event."))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse(null);
        return new SheetPage.Events(
                recorded(draft),
                draft.catalogue().kinds().stream()
                        .map(kind -> new SheetPage.Option(
                                kind.code(), kind.name(), kind.blocking() ? words.say("sheet.event.blocks") : null))
                        .toList(),
                places,
                options("sheet.reason.", TakeoverReason.values()),
                shown.text("event.code"),
                shown.text("event.reason"),
                shown.text("event.action"),
                error);
    }

    /** The events on the sheet in words, in the order they were recorded. */
    List<SheetPage.Recorded> recorded(Draft draft) {
        return draft.sheet().events().stream()
                .map(event -> new SheetPage.Recorded(event.id().toString(), text(draft, event)))
                .toList();
    }

    private String text(Draft draft, RecordedEvent event) {
        String name = draft.catalogue().kind(event.eventCode()).name();
        String step = event.stepCode() == null
                ? null
                : draft.rubric().step(event.stepCode()).name();
        String reason = event.reason() == null
                ? null
                : words.say("sheet.reason." + event.reason().name());
        return Stream.of(name, step, reason, event.actionTaken())
                .filter(part -> part != null && !part.isEmpty())
                .reduce((all, next) -> words.say("sheet.event.line", all, next))
                .orElse(name);
    }

    private List<SheetPage.Option> options(String keys, Enum<?>[] values) {
        return Stream.of(values)
                .map(value -> new SheetPage.Option(value.name(), words.say(keys + value.name()), null))
                .toList();
    }

    /** What is confirmed of the role in words, empty until it is. */
    String roleSaid(Draft draft) {
        @Nullable Part part = draft.sheet().confirmedPart();
        @Nullable Supervision supervision = draft.sheet().givenSupervision();
        return part == null || supervision == null ? "" : roleSaid(draft.traineeName(), part, supervision);
    }
}
