package org.scrubline.casework;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredReflections implements Reflections {

    private final ReflectionStore store;
    private final Rubrics rubrics;
    private final Clock clock;

    StoredReflections(ReflectionStore store, Rubrics rubrics, Clock clock) {
        this.store = store;
        this.rubrics = rubrics;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Reflection> of(SignedIn who) {
        return store.of(who.personId());
    }

    @Override
    public Attempt<UUID> write(SignedIn who, String procedure, String step, String note) {
        if (!who.has(Role.TRAINEE) || !known(procedure, step)) {
            throw new NotFound();
        }
        String text = FreeText.tidy(note);
        Optional<Refusal> refusal = text.isEmpty()
                ? Optional.of(Refusal.at("note", "refusal.reflection.empty"))
                : FreeText.narrative("note", text, LENGTH);
        return refusal.<Attempt<UUID>>map(Attempt::refused)
                .orElseGet(() -> Attempt.done(keep(who, procedure, step, text)));
    }

    private UUID keep(SignedIn who, String procedure, String step, String text) {
        UUID id = UUID.randomUUID();
        store.insert(
                who.personId(),
                new Reflection(id, procedure, step, text, clock.instant().truncatedTo(ChronoUnit.MICROS)));
        return id;
    }

    /** In any published version, since a trainee's own page shows steps of older ones too. */
    private boolean known(String procedure, String step) {
        if (procedure.isEmpty()) {
            return step.isEmpty();
        }
        return rubrics.published().stream()
                .map(PublishedRubric::rubric)
                .filter(rubric -> rubric.procedure().equals(procedure))
                .anyMatch(rubric -> step.isEmpty() || rubric.find(step).isPresent());
    }

    @Override
    public void remove(SignedIn who, UUID id) {
        if (store.delete(who.personId(), id) == 0) {
            throw new NotFound();
        }
    }
}
