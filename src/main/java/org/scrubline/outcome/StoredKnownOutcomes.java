package org.scrubline.outcome;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredKnownOutcomes implements KnownOutcomes {

    private final OutcomeStore store;
    private final OutcomeCaseQueries queries;

    StoredKnownOutcomes(OutcomeStore store, OutcomeCaseQueries queries) {
        this.store = store;
        this.queries = queries;
    }

    @Override
    public Set<UUID> atMonthThree(Collection<UUID> cases, Instant knownAt) {
        Map<UUID, List<OutcomeEntry>> entries = store.known(cases, knownAt);
        return queries.operated(entries.keySet()).entrySet().stream()
                .filter(day -> seen(day.getValue(), entries.getOrDefault(day.getKey(), List.of())))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }

    private static boolean seen(LocalDate operated, List<OutcomeEntry> entries) {
        return CaseOutcome.of(operated, entries).visits().stream().anyMatch(one -> one.window() == FollowUp.M3);
    }
}
