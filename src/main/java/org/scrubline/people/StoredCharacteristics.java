package org.scrubline.people;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredCharacteristics implements Characteristics {

    private final CharacteristicStore store;
    private final Clock clock;

    StoredCharacteristics(CharacteristicStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Map<Characteristic, String> own(SignedIn who) {
        return store.of(who.personId());
    }

    @Override
    public Attempt<Integer> say(SignedIn who, Map<Characteristic, String> answers) {
        if (!who.has(Role.TRAINEE)) {
            throw new NotFound();
        }
        List<Refusal> unknown = answers.entrySet().stream()
                .filter(answer -> !answer.getKey().answers().contains(answer.getValue()))
                .map(answer -> Refusal.at(answer.getKey().name(), "refusal.characteristic"))
                .toList();
        if (!unknown.isEmpty()) {
            return Attempt.refused(unknown);
        }
        store.replace(who.personId(), answers, clock.instant().truncatedTo(ChronoUnit.MICROS));
        return Attempt.done(answers.size());
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, Map<Characteristic, String>> ofTrainees(SignedIn analyst, UUID programmeId) {
        if (!analyst.has(Role.ANALYST, programmeId)) {
            throw new NotFound();
        }
        return store.ofTrainees(programmeId);
    }
}
