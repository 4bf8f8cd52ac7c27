package org.scrubline.signoff;

import static java.util.Objects.requireNonNull;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.scrubline.casework.PieceCount;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/**
 * What must hold at the moment of signing; how late it is matters for the first version only. The field of a reason says
 * where to mend it: {@link Signing#AUTHORITY} for who may sign at all, {@code role} and {@code step-CODE} for places on the sheet, empty for what no entry can mend.
 */
@Component
class SigningRules {

    private final SigningAuthority authority;
    private final Settings settings;
    private final LateReleaseStore releases;
    private final Clock clock;

    SigningRules(SigningAuthority authority, Settings settings, LateReleaseStore releases, Clock clock) {
        this.authority = authority;
        this.settings = settings;
        this.releases = releases;
        this.clock = clock;
    }

    /** {@code at} is the instant of the signature, which its age counts to. */
    List<Refusal> obstacles(SurgicalCase operation, Sheet sheet, Rubric rubric, Instant at) {
        List<Refusal> obstacles =
                new ArrayList<>(authority.supervisor(operation.programmeId(), sheet.editorId(), sheet.traineeId()));
        if (sheet.reopening() == null) {
            timing(operation, sheet, at).ifPresent(obstacles::add);
        }
        if (sheet.confirmedPart() == null || sheet.givenSupervision() == null) {
            obstacles.add(Refusal.at("role", "signoff.refusal.role-open"));
        }
        pieces(sheet, rubric).ifPresent(obstacles::add);
        blank(sheet, rubric)
                .forEach(
                        step -> obstacles.add(Refusal.at("step-" + step.code(), "signoff.refusal.blank", step.name())));
        return obstacles;
    }

    /** Pieces in and out that differ are counted again, or recorded as the event they are. */
    private static Optional<Refusal> pieces(Sheet sheet, Rubric rubric) {
        boolean recorded =
                sheet.events().stream().anyMatch(event -> event.eventCode().equals(EventCatalogue.SPONGE_RETAINED));
        return PieceCount.of(rubric, sheet)
                .filter(count -> count.differs() && !recorded)
                .map(count -> Refusal.at(
                        "step-" + count.outStep().code(),
                        "signoff.refusal.pieces",
                        requireNonNull(count.in()),
                        requireNonNull(count.out())));
    }

    static List<Step> blank(Sheet sheet, Rubric rubric) {
        return rubric.steps().stream()
                .filter(step -> sheet.step(step.code()) instanceof StepState.Blank)
                .toList();
    }

    private Optional<Refusal> timing(SurgicalCase operation, Sheet sheet, Instant at) {
        Instant endedAt = operation.endedAt();
        if (endedAt == null) {
            return Optional.of(Refusal.of("signoff.refusal.not-ended"));
        }
        ProgrammeSettings now = settings.of(operation.programmeId());
        if (endedAt.isAfter(clock.instant().plus(now.clockSkew()))) {
            return Optional.of(Refusal.of("signoff.refusal.ends-later"));
        }
        boolean closed = Duration.between(endedAt, at).compareTo(now.closedAfter()) > 0;
        return closed && releases.of(sheet.id()).isEmpty()
                ? Optional.of(
                        Refusal.of("signoff.refusal.closed", now.closedAfter().toDays()))
                : Optional.empty();
    }
}
