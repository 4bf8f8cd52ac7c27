package org.scrubline.signoff;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseVerdict;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Part;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.Verdict;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.TakeoverReason;

/**
 * Everything a signature covers except the instant of signing: what the review page shows in words.
 *
 * <p>Its canonical JSON (RFC 8785, text in normal form C) has the <em>reviewed hash</em>. The signer sends that hash
 * back, which binds the signature to what was read. {@link SignedContent} puts the same JSON, byte for byte, beside the
 * reviewed hash and the instant; the hash of that whole is the <em>content hash</em> of the record.
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param version version of the sheet being signed, 1 for the first
 * @param confirmedPart null while the supervisor has not said it
 * @param givenSupervision null while the supervisor has not said it
 * @param steps every step of the rubric, in its order
 * @param measures those taken, in the order of the rubric
 * @param events in the order they were recorded
 * @param firstScoredAt null when no step was scored
 * @param replaces what a new version stands in place of; null for the first
 */
public record SheetContent(
        String schema,
        UUID sheet,
        int version,
        Named organisation,
        RubricUsed rubric,
        CaseFacts operation,
        Named trainee,
        @Nullable Part confirmedPart,
        @Nullable Supervision givenSupervision,
        List<StepLine> steps,
        List<MeasureLine> measures,
        List<EventLine> events,
        String strength,
        String nextStep,
        VerdictLine verdict,
        @Nullable Instant firstScoredAt,
        @Nullable Replaces replaces,
        Signer signer) {

    /** Name and version of this form; a change of the members every record has is another version. */
    public static final String SCHEMA = "scrubline-sheet/2";

    /** Something with an id, under the name it had then. */
    public record Named(UUID id, String name) {}

    /**
     * The version a new one stands in place of, why, and by which right its signer signs it.
     *
     * @param record id of that version
     * @param grantedBy the statement that gave the right; null for the scorer's own
     */
    public record Replaces(
            UUID record,
            int version,
            String contentHash,
            String reason,
            VersionBasis basis,
            @Nullable UUID grantedBy) {}

    /** The rubric version the levels refer to; its own hash fixes every sentence. */
    public record RubricUsed(UUID id, String procedure, String title, String version, String contentHash) {}

    /** The case as it stood; {@code endedAt} is null only while it cannot be signed for that. */
    public record CaseFacts(
            UUID id,
            UUID programme,
            String reference,
            String procedure,
            Eye eye,
            String siteCode,
            @Nullable Instant endedAt,
            @Nullable ZoneId endedZone,
            Supervision plannedSupervision,
            List<String> factors,
            Band band,
            boolean complexitySetLate) {}

    /**
     * A step; {@code level} goes with SCORED, {@code cause} with BY_SUPERVISOR, null otherwise.
     *
     * @param inBulk true when answered together with others in one action; null, and absent from the JSON, when not
     */
    public record StepLine(
            String code,
            boolean critical,
            String state,
            @Nullable Integer level,
            StepState.BySupervisor.@Nullable Cause cause,

            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable
            Boolean inBulk) {

        static StepLine of(String code, boolean critical, StepState state) {
            return state.fold(
                    level -> new StepLine(code, critical, "SCORED", level, null, null),
                    cause -> new StepLine(code, critical, "BY_SUPERVISOR", null, cause, null),
                    () -> new StepLine(code, critical, "NOT_PART", null, null, null),
                    () -> new StepLine(code, critical, "NOT_SEEN", null, null, null),
                    () -> new StepLine(code, critical, "BLANK", null, null, null));
        }

        /** The same answer, given together with others. */
        StepLine together() {
            return new StepLine(code, critical, state, level, cause, true);
        }

        StepState said() {
            return switch (state) {
                case "SCORED" -> new StepState.Scored(Objects.requireNonNull(level));
                case "BY_SUPERVISOR" -> new StepState.BySupervisor(Objects.requireNonNull(cause));
                case "NOT_PART" -> new StepState.NotPart();
                case "NOT_SEEN" -> new StepState.NotSeen();
                case "BLANK" -> StepState.blank();
                default -> throw new IllegalStateException("a step in state " + state);
            };
        }
    }

    /** A measure; the value is decimal text, so that no reader turns it into a binary fraction. */
    public record MeasureLine(String step, String code, String value) {}

    /** An event; {@code reason} is that of a takeover. */
    public record EventLine(
            String code, @Nullable String step, @Nullable TakeoverReason reason, boolean blocking, String action) {}

    /** The verdict with its reasons as message keys and arguments, kept so that a later rule cannot reword them. */
    public record VerdictLine(Verdict verdict, List<Reason> reasons) {
        /** One reason; {@code field} names the step it is about, empty when it is none. */
        public record Reason(String field, String key, List<Object> arguments) {}

        static VerdictLine of(CaseVerdict verdict) {
            return new VerdictLine(
                    verdict.verdict(),
                    verdict.reasons().stream()
                            .map(reason -> new Reason(reason.field(), reason.messageKey(), reason.arguments()))
                            .toList());
        }

        /** The verdict with its reasons as sentences by message key. */
        public CaseVerdict toVerdict() {
            return new CaseVerdict(
                    verdict,
                    reasons.stream()
                            .map(reason ->
                                    Refusal.of(reason.key(), reason.arguments().toArray()))
                            .toList());
        }
    }

    /** Who signs, in which role, and what the signature means, as key and in words. */
    public record Signer(UUID id, String name, String role, String meaningKey, String meaning) {}

    /** Reads the JSON of a preview. */
    public static SheetContent read(String json) {
        return CanonicalJson.read(json, SheetContent.class);
    }

    /** Reads JSON that came back from a page; empty unless it is what this hash was made from. */
    public static Optional<SheetContent> read(String json, String hash) {
        return CanonicalJson.sha256(json).equals(hash) ? Optional.of(read(json)) : Optional.empty();
    }
}
