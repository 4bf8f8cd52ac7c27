package org.scrubline.support;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Part;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.casework.Verdict;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.RecordMarks;
import org.scrubline.signoff.SignedSheet;

/**
 * Signed sheets for tests of pure counting: every step at 4, signed an hour after the case, unless told otherwise. The
 * rubric is small: S1 and S2 are critical, S3 critical in converted cases only, S4 is not critical.
 */
public final class ASignedSheet {

    public static final UUID VERSION = UUID.fromString("00000000-0000-4000-8000-000000000001");
    public static final UUID PROGRAMME = UUID.fromString("00000000-0000-4000-8000-000000000002");
    public static final UUID TRAINEE = UUID.fromString("00000000-0000-4000-8000-000000000003");
    public static final Instant START = Instant.parse("2026-01-05T12:00:00Z");
    public static final Rubric RUBRIC = new Rubric(
            "TRAB_FORNIX",
            "1.0",
            "Small procedure",
            Family.TRABECULECTOMY,
            List.of(
                    step("S1", true, false),
                    step("S2", true, false),
                    step("S3", true, true),
                    step("S4", false, false)));

    private final Map<String, StepState> states = new LinkedHashMap<>();
    private UUID caseId = UUID.randomUUID();
    private UUID trainee = TRAINEE;
    private UUID signer = scorer(1);
    private Instant endedAt = START;
    private Duration delay = Duration.ofHours(1);
    private @Nullable Duration firstDelay;
    private Part part = Part.WHOLE_CASE;
    private Verdict verdict = Verdict.INDEPENDENT;
    private List<SignedSheet.SignedEvent> events = List.of();
    private Band band = Band.A;
    private Rubric rubric = RUBRIC;
    private UUID version = VERSION;
    private RecordMarks marks = RecordMarks.NONE;

    private ASignedSheet() {}

    public static ASignedSheet ofDay(int day) {
        ASignedSheet sheet = new ASignedSheet();
        sheet.endedAt = START.plus(Duration.ofDays(day));
        RUBRIC.steps().forEach(step -> sheet.states.put(step.code(), new StepState.Scored(4)));
        sheet.states.put("S3", new StepState.NotPart());
        return sheet;
    }

    /** The n-th supervisor of a test. */
    public static UUID scorer(int n) {
        return new UUID(0x4000L, 0x8000000000000000L + n);
    }

    public static Step step(String code, boolean critical, boolean onlyWhenConverted) {
        return new Step(
                code,
                "Step " + code,
                Phase.FLAP,
                critical,
                "Looks at " + code,
                List.of(),
                List.of("one", "two", "three", "four", "five"),
                List.of(),
                List.of("Try " + code),
                List.of(),
                onlyWhenConverted);
    }

    public ASignedSheet level(String step, int level) {
        return state(step, new StepState.Scored(level));
    }

    public ASignedSheet state(String step, StepState state) {
        states.put(step, state);
        return this;
    }

    public ASignedSheet by(int scorer) {
        signer = scorer(scorer);
        return this;
    }

    public ASignedSheet about(UUID newTrainee) {
        trainee = newTrainee;
        return this;
    }

    public ASignedSheet inCase(UUID newCase) {
        caseId = newCase;
        return this;
    }

    public ASignedSheet part(Part newPart) {
        part = newPart;
        return this;
    }

    public ASignedSheet verdict(Verdict newVerdict) {
        verdict = newVerdict;
        return this;
    }

    public ASignedSheet signedAfter(Duration newDelay) {
        delay = newDelay;
        return this;
    }

    /** A later version of a sheet whose first one was signed this long after the case. */
    public ASignedSheet firstSignedAfter(Duration first) {
        firstDelay = first;
        return this;
    }

    public ASignedSheet contested() {
        marks = new RecordMarks(true, null, false);
        return this;
    }

    public ASignedSheet awaitingCountersignature() {
        marks = new RecordMarks(false, null, true);
        return this;
    }

    public ASignedSheet band(Band newBand) {
        band = newBand;
        return this;
    }

    public ASignedSheet takeoverOn(String step) {
        events = List.of(new SignedSheet.SignedEvent(EventCatalogue.TAKEOVER, step, "TEACHING", false));
        return this;
    }

    /** Scored with another rubric; its steps must have a state. */
    public ASignedSheet with(Rubric newRubric, UUID newVersion) {
        rubric = newRubric;
        version = newVersion;
        return this;
    }

    public SignedSheet build() {
        Instant signedAt = endedAt.plus(delay);
        Duration first = firstDelay == null ? delay : firstDelay;
        List<SignedSheet.SignedStep> steps = rubric.steps().stream()
                .map(step -> new SignedSheet.SignedStep(
                        step.code(), step.critical(), states.getOrDefault(step.code(), new StepState.NotSeen())))
                .toList();
        return new SignedSheet(
                new UUID(caseId.getMostSignificantBits(), signer.getLeastSignificantBits()),
                UUID.randomUUID(),
                1,
                "{}",
                "0".repeat(64),
                signer,
                "Scorer " + (signer.getLeastSignificantBits() & 0xff),
                "SUPERVISOR",
                "signature.meaning.OBSERVED_AND_SCORED",
                signedAt,
                ZoneId.of("Europe/London"),
                signedAt,
                endedAt.plus(first),
                PROGRAMME,
                UUID.randomUUID(),
                caseId,
                endedAt,
                trainee,
                version,
                rubric.procedure(),
                band,
                part,
                Supervision.SCRUBBED,
                verdict,
                first.compareTo(Duration.ofHours(72)) > 0,
                marks,
                steps,
                events);
    }
}
