package org.scrubline.training;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TypedDay;
import org.springframework.stereotype.Component;

/** Why an entry or an answer cannot be kept as typed. */
@Component
class TrainingRule {

    /** Longest text in characters. */
    private static final int LENGTH = 500;

    private final People people;
    private final Clock clock;

    TrainingRule(People people, Clock clock) {
        this.people = people;
        this.clock = clock;
    }

    /** Nothing for an entry that can be kept. */
    List<Refusal> against(
            SignedIn who,
            TrainingAccess.Found found,
            TrainingDraft draft,
            TrainingKind kind,
            @Nullable Exercise exercise) {
        List<Refusal> reasons = new ArrayList<>();
        boolean practice = kind == TrainingKind.WET_LAB;
        if (practice && exercise == null) {
            reasons.add(Refusal.at("exercise", "refusal.training.exercise"));
        }
        LocalDate today = LocalDate.ofInstant(clock.instant(), found.programme().zone());
        if (TypedDay.of(draft.day()).filter(day -> !day.isAfter(today)).isEmpty()) {
            reasons.add(Refusal.at("day", "refusal.training.day"));
        }
        String said = FreeText.tidy(draft.said());
        if (said.isEmpty() && (!practice || exercise == Exercise.OTHER)) {
            reasons.add(Refusal.at("said", "refusal.training.said"));
        }
        FreeText.narrative("said", said, LENGTH).ifPresent(reasons::add);
        if (practice && people.inConflict(who.personId(), found.trainee().id())) {
            reasons.add(Refusal.at("kind", "refusal.training.conflict"));
        }
        return reasons;
    }

    /** Nothing for an answer that can be given. */
    Optional<Refusal> againstAnswer(SignedIn who, TrainingEntry entry, boolean confirmed, String said) {
        if (!entry.waits()) {
            return Optional.of(Refusal.at("entry", "refusal.training.answered"));
        }
        if (people.inConflict(who.personId(), entry.traineeId())) {
            return Optional.of(Refusal.at("entry", "refusal.training.conflict"));
        }
        return said.isEmpty() && !confirmed
                ? Optional.of(Refusal.at("remark", "refusal.training.remark"))
                : FreeText.narrative("remark", said, LENGTH);
    }
}
