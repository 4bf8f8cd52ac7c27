package org.scrubline.people;

import java.time.Clock;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/** The scope must stand before the transaction begins, so the transaction is opened by hand inside it. */
@Service
class StoredOrganisations implements Organisations {

    private final PlaceStore places;
    private final TransactionTemplate transaction;
    private final Clock clock;

    StoredOrganisations(PlaceStore places, TransactionTemplate transaction, Clock clock) {
        this.places = places;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Override
    public UUID open(String name) {
        UUID tenant = UUID.randomUUID();
        TenantScope.run(tenant, () -> openHere(name));
        return tenant;
    }

    @Override
    public void openHere(String name) {
        transaction.executeWithoutResult(
                status -> places.insertOrganisation(TenantScope.require(), name, clock.instant()));
    }
}
