package org.scrubline.entitlement;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredEntitlements implements Entitlements, EntitlementBook {

    private final EntitlementStore store;
    private final Ledger ledger;

    StoredEntitlements(EntitlementStore store, Ledger ledger) {
        this.store = store;
        this.ledger = ledger;
    }

    @Override
    public List<Entitlement> of(UUID programmeId, UUID traineeId) {
        return Entitlement.after(store.changes(programmeId, traineeId));
    }

    @Override
    public Optional<Entitlement> of(UUID programmeId, UUID traineeId, Family family, Band band) {
        return of(programmeId, traineeId).stream()
                .filter(one -> one.family() == family && one.bands().contains(band))
                .findFirst();
    }

    @Override
    public List<Entitlement> ofProgramme(UUID programmeId) {
        Map<UUID, List<EntitlementChange>> byTrainee = store.changes(programmeId, null).stream()
                .collect(Collectors.groupingBy(EntitlementChange::traineeId, LinkedHashMap::new, Collectors.toList()));
        return byTrainee.values().stream()
                .flatMap(changes -> Entitlement.after(changes).stream())
                .toList();
    }

    @Override
    public List<EntitlementChange> history(UUID programmeId, UUID traineeId) {
        return store.changes(programmeId, traineeId);
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void record(EntitlementChange change) {
        store.lock(change.traineeId());
        UUID id = UUID.randomUUID();
        store.insert(id, change);
        ledger.append(LeafKind.ENTITLEMENT, id);
    }
}
