package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Part;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.Verdict;
import org.scrubline.rubric.Band;

/**
 * One signed version of a sheet. Everything that is counted is counted from these.
 *
 * @param text canonical JSON (RFC 8785) of exactly what was signed; null among all sheets of a programme, which are read to be
 *     counted: their texts took as long to read as everything else about them
 * @param contentHash SHA-256 of the text, lower-case hexadecimal
 * @param meaning message key of the meaning of the signature
 * @param firstSignedAt when version 1 was signed; lateness is judged by it
 * @param late version 1 was signed more than 72 hours after the end of the case
 * @param marks what stands beside the record now
 */
public record SignedSheet(
        UUID id,
        UUID sheetId,
        int versionNo,
        @Nullable String text,
        String contentHash,
        UUID signerId,
        String signerName,
        String signerRole,
        String meaning,
        Instant signedAt,
        ZoneId signedZone,
        Instant receivedAt,
        Instant firstSignedAt,
        UUID programmeId,
        UUID siteId,
        UUID caseId,
        Instant caseEndedAt,
        UUID traineeId,
        UUID rubricVersionId,
        String procedureCode,
        Band band,
        Part confirmedPart,
        Supervision givenSupervision,
        Verdict verdict,
        boolean late,
        RecordMarks marks,
        List<SignedStep> steps,
        List<SignedEvent> events) {

    /** A step as signed. */
    public record SignedStep(String stepCode, boolean critical, StepState state) {}

    /** An event as signed; {@code reason} is that of a takeover. */
    public record SignedEvent(
            String eventCode,
            @Nullable String stepCode,
            @Nullable String reason,
            boolean blocking) {}

    public SignedSheet {
        steps = List.copyOf(steps);
        events = List.copyOf(events);
    }

    /**
     * Canonical JSON of exactly what was signed.
     *
     * @throws NullPointerException for a sheet read to be counted
     */
    public String content() {
        return Objects.requireNonNull(text, "read to be counted, without its text");
    }

    /** The same sheet, which was read without them. */
    SignedSheet withSteps(List<SignedStep> read) {
        return new SignedSheet(
                id,
                sheetId,
                versionNo,
                text,
                contentHash,
                signerId,
                signerName,
                signerRole,
                meaning,
                signedAt,
                signedZone,
                receivedAt,
                firstSignedAt,
                programmeId,
                siteId,
                caseId,
                caseEndedAt,
                traineeId,
                rubricVersionId,
                procedureCode,
                band,
                confirmedPart,
                givenSupervision,
                verdict,
                late,
                marks,
                read,
                events);
    }

    /** A critical step at 1 or 2, or a takeover on a critical step: the event the control charts watch. */
    public boolean criticalFailure() {
        boolean low = steps.stream()
                .anyMatch(step ->
                        step.critical() && step.state() instanceof StepState.Scored scored && scored.level() <= 2);
        boolean takeover = events.stream()
                .filter(event -> event.eventCode().equals(org.scrubline.rubric.EventCatalogue.TAKEOVER))
                .anyMatch(event -> steps.stream()
                        .anyMatch(step -> step.critical() && step.stepCode().equals(event.stepCode())));
        return low || takeover;
    }
}
