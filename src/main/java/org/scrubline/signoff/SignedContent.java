package org.scrubline.signoff;

import static java.util.Objects.requireNonNull;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.signoff.SignedSheet.SignedEvent;
import org.scrubline.signoff.SignedSheet.SignedStep;

/**
 * The whole of a signed record: what was reviewed, its hash, and when it was signed. In canonical form the reviewed
 * part is byte for byte the JSON the reviewed hash was made from, so one text proves both.
 *
 * @param reviewed what the signer read
 * @param reviewedHash SHA-256 of its canonical JSON, lower-case hexadecimal
 * @param signedAt instant of signing, UTC
 * @param signedZone zone of the site's clocks
 * @param credential what the signer was recognised by; null in history written without asking, as in the demo programme
 * @param late version 1 was signed later after the end of the case than the programme allowed then
 * @param countersign why a second supervisor has to sign too; absent from the JSON when there is no reason
 * @param release absent unless a director had to let it be signed
 * @param device absent unless it was signed on a device that was offline
 */
public record SignedContent(
        SheetContent reviewed,
        String reviewedHash,
        Instant signedAt,
        ZoneId signedZone,
        boolean late,
        @Nullable CredentialUsed credential,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<CountersignReason> countersign,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Release release,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable DeviceTime device) {

    /** The director who let it be signed late, as printed then, and why. */
    public record Release(UUID id, String name, String role, Instant at, ZoneId zone, String reason) {}

    /**
     * The clock of the device at the signature, in whole seconds.
     *
     * @param far it could not be relied on, and the signature counts from when the server received it
     * @param receivedLate it was made in time and reached the server late
     */
    public record DeviceTime(Instant at, ZoneId zone, boolean far, boolean receivedLate) {}

    /** The JSON of a record of before countersigning has no such member and leaves null here. */
    public SignedContent {
        countersign = Objects.requireNonNullElse(countersign, List.of());
    }

    /** Reads the content of a signed sheet. */
    public static SignedContent read(String json) {
        return CanonicalJson.read(json, SignedContent.class);
    }

    /** What its signer's passkey must have signed, if it was one; lower-case hexadecimal. */
    public String credentialHash() {
        return TableStatement.signedHash(this);
    }

    /**
     * The record to store of this content.
     *
     * @param receivedAt when the server had it
     * @param firstSignedAt when version 1 was signed
     */
    SignedSheet record(SurgicalCase operation, Instant receivedAt, Instant firstSignedAt) {
        String json = CanonicalJson.of(this);
        SheetContent.Signer signer = reviewed.signer();
        return new SignedSheet(
                UUID.randomUUID(),
                reviewed.sheet(),
                reviewed.version(),
                json,
                CanonicalJson.sha256(json),
                signer.id(),
                signer.name(),
                signer.role(),
                signer.meaningKey(),
                signedAt,
                signedZone,
                receivedAt,
                firstSignedAt,
                operation.programmeId(),
                operation.siteId(),
                operation.id(),
                requireNonNull(operation.endedAt()),
                reviewed.trainee().id(),
                reviewed.rubric().id(),
                reviewed.rubric().procedure(),
                operation.band(),
                requireNonNull(reviewed.confirmedPart()),
                requireNonNull(reviewed.givenSupervision()),
                reviewed.verdict().verdict(),
                late,
                new RecordMarks(false, null, !countersign.isEmpty()),
                steps(),
                events());
    }

    private List<SignedStep> steps() {
        return reviewed.steps().stream()
                .map(step -> new SignedStep(step.code(), step.critical(), step.said()))
                .toList();
    }

    private List<SignedEvent> events() {
        return reviewed.events().stream()
                .map(event -> new SignedEvent(
                        event.code(),
                        event.step(),
                        event.reason() == null ? null : event.reason().name(),
                        event.blocking()))
                .toList();
    }
}
