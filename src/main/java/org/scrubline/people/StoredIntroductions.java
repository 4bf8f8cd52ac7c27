package org.scrubline.people;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
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
        return store.earliest(programmeId);
    }

    @Override
    public Attempt<LocalDate> record(SignedIn director, UUID programmeId, UUID supervisorId, String day) {
        if (!director.has(Role.DIRECTOR, programmeId)) {
            throw new NotFound();
        }
        List<Refusal> reasons = new ArrayList<>();
        boolean supervises = people.holding(programmeId, Role.SUPERVISOR).stream()
                .anyMatch(person -> person.id().equals(supervisorId));
        if (!supervises) {
            reasons.add(Refusal.at("supervisor", "refusal.introduction.supervisor"));
        }
        Optional<LocalDate> introduced = date(day, today(programmeId));
        if (introduced.isEmpty()) {
            reasons.add(Refusal.at("day", "refusal.introduction.day"));
        }
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        store.insert(programmeId, supervisorId, introduced.get(), director.personId(), clock.instant())
                .ifPresent(id -> ledger.append(LeafKind.INTRODUCTION, id));
        return Attempt.done(introduced.get());
    }

    private LocalDate today(UUID programme) {
        return clock.instant().atZone(people.programme(programme).zone()).toLocalDate();
    }

    private static Optional<LocalDate> date(String typed, LocalDate today) {
        try {
            return Optional.of(LocalDate.parse(typed.strip()))
                    .filter(day -> !day.isAfter(today) && day.getYear() > 1999);
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
