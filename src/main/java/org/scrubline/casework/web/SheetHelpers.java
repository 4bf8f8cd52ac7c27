package org.scrubline.casework.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.scrubline.casework.CaseFile;
import org.scrubline.casework.Cases;
import org.scrubline.casework.FocusSteps;
import org.scrubline.casework.OpenSheets;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/**
 * What stands above the steps of a sheet to help its scorer look: today's focus and the trainee's goal. A focus step
 * comes with the number of earlier scores it rests on and without their levels, which must not colour today's.
 */
@Component
class SheetHelpers {

    /** How long a supervisor sees what earlier sheets point to, from the end of the case. */
    private static final Duration ON_THE_LIST = Duration.ofHours(24);

    private final Cases cases;
    private final OpenSheets sheets;
    private final FocusSteps focus;
    private final SheetWords words;
    private final Clock clock;

    SheetHelpers(Cases cases, OpenSheets sheets, FocusSteps focus, SheetWords words, Clock clock) {
        this.cases = cases;
        this.sheets = sheets;
        this.focus = focus;
        this.words = words;
        this.clock = clock;
    }

    /** A step to look at, by the id of its place on the page. */
    record Line(String href, String name, String note) {}

    /** The help; {@code goal} is empty when nothing was said, {@code begun} when nobody else began the sheet. */
    record Help(List<Line> focus, String goal, String begun) {
        /** Whether there is nothing to show. */
        public boolean isEmpty() {
            return focus.isEmpty() && goal.isEmpty();
        }
    }

    /** Nothing on a later version: the case is long over, and who writes it may be a reviewer the goal was not said to. */
    Help of(SignedIn who, Draft draft) {
        return draft.sheet().reopening() == null
                ? new Help(focusNow(draft), goal(who, draft), begun(draft, "sheet.begun"))
                : new Help(List.of(), "", "");
    }

    /** Whoever signs answers of somebody else as their own should know whose they were. */
    private String begun(Draft draft, String key) {
        return sheets.begun(draft.sheet().id())
                .map(begun ->
                        words.say(key, begun.answered(), words.day(begun.at(), draft.surgicalCase()), begun.name()))
                .orElse("");
    }

    private String goal(SignedIn who, Draft draft) {
        return cases.open(who, draft.surgicalCase().id()).trainees().stream()
                .filter(trainee -> trainee.traineeId().equals(draft.sheet().traineeId()))
                .map(CaseFile.Participant::goal)
                .findFirst()
                .orElse("");
    }

    /** The same for a device to keep, without the goal: it is the trainee's own text and may name somebody. */
    Help forDevice(Draft draft) {
        return new Help(focusNow(draft), "", begun(draft, "sheet.begun.nameless"));
    }

    private List<Line> focusNow(Draft draft) {
        return recent(draft.surgicalCase()) ? focus(draft) : List.of();
    }

    private boolean recent(SurgicalCase found) {
        Instant ended = found.endedAt();
        return ended == null || clock.instant().isBefore(ended.plus(ON_THE_LIST));
    }

    private List<Line> focus(Draft draft) {
        SurgicalCase found = draft.surgicalCase();
        return focus
                .of(
                        found.programmeId(),
                        draft.sheet().traineeId(),
                        draft.rubric().procedure())
                .stream()
                .filter(one -> draft.rubric().find(one.step().code()).isPresent())
                .map(one -> new Line(
                        "#step-" + one.step().code(),
                        draft.rubric().step(one.step().code()).name(),
                        words.say("sheet.focus.note", one.scored())))
                .toList();
    }
}
