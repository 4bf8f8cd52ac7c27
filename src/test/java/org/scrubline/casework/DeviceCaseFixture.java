package org.scrubline.casework;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.CaseSubmission.Kept;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.stereotype.Component;

/** Cases as a trainee's device sends them. */
@Component
public class DeviceCaseFixture {

    private final DeviceCases intake;

    DeviceCaseFixture(DeviceCases intake) {
        this.intake = intake;
    }

    /** The answers of a plain case, by the form's names. */
    public static Map<String, List<String>> answers(
            TestOrganisation organisation, SignedIn supervisor, String reference, String endedAt) {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        fields.put("programme", List.of(organisation.programme().id().toString()));
        fields.put("reference", List.of(reference));
        fields.put("procedure", List.of(Procedures.TRAB_FORNIX));
        fields.put("eye", List.of("RIGHT"));
        fields.put("site", List.of(organisation.site().id().toString()));
        fields.put("endedAt", List.of(endedAt));
        fields.put("supervisor", List.of(supervisor.personId().toString()));
        fields.put("plannedSupervision", List.of("SCRUBBED"));
        fields.put("claimedPart", List.of("WHOLE_CASE"));
        return fields;
    }

    /** The content of a submission. */
    public static CaseSubmission submission(
            UUID id, SignedIn trainee, Map<String, List<String>> fields, Instant keptAt) {
        String content = CanonicalJson.of(
                Map.of("fields", fields, "person", trainee.personId().toString()));
        return new CaseSubmission(id, content, new Kept(keptAt, "Europe/London", 4_000, 1_500L));
    }

    /** A case whose end is still to come, waiting for its trainee; its id. */
    public UUID aside(TestOrganisation organisation, SignedIn trainee, SignedIn supervisor, Instant now) {
        CaseEntry entry = new CaseEntry(
                organisation.programme().id(),
                trainee.personId(),
                supervisor.personId(),
                organisation.site().id(),
                "Z9-999",
                Procedures.TRAB_FORNIX,
                Eye.RIGHT,
                Part.WHOLE_CASE,
                Supervision.SCRUBBED,
                List.of(),
                now.plus(Duration.ofDays(1)),
                ZoneId.of("Europe/London"),
                null,
                null);
        CaseSubmission sent = submission(
                UUID.randomUUID(), trainee, answers(organisation, supervisor, "Z9-999", "2030-01-01T10:00"), now);
        return organisation.in(() -> {
            intake.enter(trainee, sent, entry, Map.of()).orThrow();
            return intake.asides(trainee).get(0).id();
        });
    }
}
