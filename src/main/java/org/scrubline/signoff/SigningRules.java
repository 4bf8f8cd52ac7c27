package org.scrubline.signoff;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.People;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/**
 * What must hold at the moment of signing; how late it is matters for the first version only. The field of a reason says where to mend it: {@link Signing#AUTHORITY} for who may
 * sign at all, {@code role} and {@code step-CODE} for places on the sheet, empty for what no entry can mend.
 */
@Component
class SigningRules {

    static final Duration LATE_AFTER = Duration.ofDays(3);
    static final Duration CLOSED_AFTER = Duration.ofDays(14);

    private final People people;
    private final Clock clock;

    SigningRules(People people, Clock clock) {
        this.people = people;
        this.clock = clock;
    }

    List<Refusal> obstacles(SurgicalCase operation, Sheet sheet, Rubric rubric) {
        List<Refusal> obstacles = new ArrayList<>(authority(operation.programmeId(), sheet));
        if (sheet.reopening() == null) {
            timing(operation.endedAt(), obstacles);
        }
        if (sheet.confirmedPart() == null || sheet.givenSupervision() == null) {
            obstacles.add(Refusal.at("role", "signoff.refusal.role-open"));
        }
        blank(sheet, rubric)
                .forEach(
                        step -> obstacles.add(Refusal.at("step-" + step.code(), "signoff.refusal.blank", step.name())));
        return obstacles;
    }

    static List<Step> blank(Sheet sheet, Rubric rubric) {
        return rubric.steps().stream()
                .filter(step -> sheet.step(step.code()) instanceof StepState.Blank)
                .toList();
    }

    static boolean late(Instant endedAt, Instant signedAt) {
        return Duration.between(endedAt, signedAt).compareTo(LATE_AFTER) > 0;
    }

    /** Read from the database in the signing transaction, never from the page or the session. */
    private List<Refusal> authority(UUID programme, Sheet sheet) {
        List<Refusal> reasons = new ArrayList<>();
        boolean supervises = people.holding(programme, Role.SUPERVISOR).stream()
                .anyMatch(person -> person.id().equals(sheet.editorId()));
        if (!supervises) {
            reasons.add(Refusal.at(Signing.AUTHORITY, "signoff.refusal.no-supervisor"));
        }
        if (sheet.traineeId().equals(sheet.editorId())) {
            reasons.add(Refusal.at(Signing.AUTHORITY, "signoff.refusal.own-training"));
        } else if (people.inConflict(sheet.editorId(), sheet.traineeId())) {
            reasons.add(Refusal.at(Signing.AUTHORITY, "signoff.refusal.conflict"));
        }
        return reasons;
    }

    private void timing(@Nullable Instant endedAt, List<Refusal> obstacles) {
        if (endedAt == null) {
            obstacles.add(Refusal.of("signoff.refusal.not-ended"));
        } else if (Duration.between(endedAt, clock.instant()).compareTo(CLOSED_AFTER) > 0) {
            obstacles.add(Refusal.of("signoff.refusal.closed"));
        }
    }
}
