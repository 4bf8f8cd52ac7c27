package org.scrubline.casework;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One supervisor's sheet about one trainee in one case, as it stands now.
 *
 * @param confirmedPart what the trainee did, as the supervisor confirms it; null until said
 * @param givenSupervision where the supervisor really was; null until said
 * @param steps state by step code; a step without entry is blank
 * @param inBulk codes of the steps answered together with others in one action
 * @param measures value by measure code; a measure without entry was not taken
 * @param strength one strength in a sentence, empty when none
 * @param nextStep one thing for next time in a sentence, empty when none
 * @param firstScoredAt when the first step was scored; null before
 * @param lockVersion grows with each change; a change names the version it was made on
 * @param reopening the next version being written; null unless the state is {@link SheetState#REOPENED}
 */
public record Sheet(
        UUID id,
        UUID caseId,
        UUID traineeId,
        UUID scorerId,
        UUID rubricVersionId,
        SheetState state,
        @Nullable Part confirmedPart,
        @Nullable Supervision givenSupervision,
        Map<String, StepState> steps,
        Set<String> inBulk,
        Map<String, BigDecimal> measures,
        List<RecordedEvent> events,
        String strength,
        String nextStep,
        Instant openedAt,
        @Nullable Instant firstScoredAt,
        int lockVersion,
        @Nullable Reopening reopening) {

    public Sheet {
        steps = Map.copyOf(steps);
        inBulk = Set.copyOf(inBulk);
        measures = Map.copyOf(measures);
        events = List.copyOf(events);
    }

    /** What was said about a step; blank when nothing was. */
    public StepState step(String code) {
        return steps.getOrDefault(code, StepState.blank());
    }

    /** Who may write on it while it is editable. */
    public UUID editorId() {
        return reopening == null ? scorerId : reopening.editorId();
    }

    /** The version a signature on it would make, 1 for the first. */
    public int versionNo() {
        return reopening == null ? 1 : reopening.versionNo();
    }

    /** The same sheet with these states of its steps. */
    Sheet with(Map<String, StepState> states) {
        return copy(states, lockVersion);
    }

    /** The same sheet under another lock version. */
    Sheet under(int version) {
        return copy(steps, version);
    }

    private Sheet copy(Map<String, StepState> states, int version) {
        return new Sheet(
                id,
                caseId,
                traineeId,
                scorerId,
                rubricVersionId,
                state,
                confirmedPart,
                givenSupervision,
                states,
                inBulk,
                measures,
                events,
                strength,
                nextStep,
                openedAt,
                firstScoredAt,
                version,
                reopening);
    }
}
