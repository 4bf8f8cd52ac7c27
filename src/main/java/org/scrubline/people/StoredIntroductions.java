package org.scrubline.people;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TypedDay;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredIntroductions implements Introductions {

    private final IntroductionStore store;
    private final People people;
    private final Ledger ledger;
    private final Clock clock;

    StoredIntroductions(IntroductionStore store, People people, Ledger ledger, Clock clock) {
        this.store = store;
        this.people = people;
        this.ledger = ledger;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, LocalDate> of(UUID programmeId) {
        return store.earliest(programmeId, null);
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, LocalDate> of(UUID programmeId, Instant knownAt) {
        return store.earliest(programmeId, knownAt);
    }

    @Override
    public Attempt<LocalDate> record(SignedIn director, UUID programmeId, UUID personId, String day) {
        if (!director.has(Role.DIRECTOR, programmeId)) {
            throw new NotFound();
        }
        List<Refusal> reasons = new ArrayList<>();
        boolean known = Stream.of(Role.SUPERVISOR, Role.TRAINEE)
                .flatMap(role -> people.holding(programmeId, role).stream())
                .anyMatch(person -> person.id().equals(personId));
        if (!known) {
            reasons.add(Refusal.at("supervisor", "refusal.introduction.supervisor"));
        }
        Optional<LocalDate> introduced = TypedDay.of(day).filter(one -> !one.isAfter(today(programmeId)));
        if (introduced.isEmpty()) {
            reasons.add(Refusal.at("day", "refusal.introduction.day"));
        }
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        store.insert(programmeId, personId, introduced.get(), director.personId(), clock.instant())
                .ifPresent(id -> ledger.append(LeafKind.INTRODUCTION, id));
        return Attempt.done(introduced.get());
    }

    private LocalDate today(UUID programme) {
        return clock.instant().atZone(people.programme(programme).zone()).toLocalDate();
    }
}
