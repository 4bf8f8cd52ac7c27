package org.scrubline.people;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.OrganisationOpened;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.TenantScope;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/** Works as one transaction in the scope of the organisation being opened, so a refusal leaves nothing behind. */
@Service
class StoredFirstStart implements FirstStart {

    private final SetupTokenStore tokens;
    private final PlaceStore places;
    private final People people;
    private final Accounts accounts;
    private final TransactionTemplate transaction;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredFirstStart(
            SetupTokenStore tokens,
            PlaceStore places,
            People people,
            Accounts accounts,
            TransactionTemplate transaction,
            ApplicationEventPublisher events,
            Clock clock) {
        this.tokens = tokens;
        this.places = places;
        this.people = people;
        this.accounts = accounts;
        this.transaction = transaction;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public boolean waiting() {
        return accounts.none();
    }

    @Override
    public String newToken() {
        String token = SecretCode.create();
        transaction.executeWithoutResult(status -> tokens.replace(SecretCode.hash(token), clock.instant()));
        return token;
    }

    @Override
    public Attempt<UUID> complete(FirstStartEntry entry) {
        UUID tenant = UUID.randomUUID();
        return TenantScope.call(tenant, () -> open(tenant, entry));
    }

    private Attempt<UUID> open(UUID tenant, FirstStartEntry entry) {
        List<Refusal> reasons = new ArrayList<>();
        transaction.executeWithoutResult(status -> {
            if (!waiting() || !tokens.use(SecretCode.hash(entry.token()), clock.instant())) {
                reasons.add(Refusal.at("token", "refusal.setup.token"));
            } else {
                openOrganisation(tenant, entry, reasons);
            }
            if (!reasons.isEmpty()) {
                status.setRollbackOnly();
            }
        });
        return reasons.isEmpty() ? Attempt.done(tenant) : Attempt.refused(reasons);
    }

    private void openOrganisation(UUID tenant, FirstStartEntry entry, List<Refusal> reasons) {
        String name = FreeText.tidy(entry.organisation());
        if (name.isEmpty()) {
            reasons.add(Refusal.at("organisation", "refusal.name.empty"));
        }
        FreeText.check("organisation", name, 120).ifPresent(reasons::add);
        places.insertOrganisation(tenant, name, clock.instant());
        people.addSite(entry.siteCode(), entry.siteName(), entry.zone())
                .fold(site -> true, refused -> reasons.addAll(renamed(refused, "code", "siteCode", "siteName")));
        people.addProgramme(entry.programme(), entry.zone())
                .fold(
                        programme -> addAdministrator(tenant, programme.id(), entry, reasons),
                        refused -> reasons.addAll(renamed(refused, "", "", "programme")));
    }

    private boolean addAdministrator(UUID tenant, UUID programmeId, FirstStartEntry entry, List<Refusal> reasons) {
        return people.addPerson(programmeId, entry.printedName(), entry.username(), Role.ADMINISTRATOR)
                .fold(
                        person -> {
                            events.publishEvent(new OrganisationOpened(tenant, person.personId()));
                            return accounts.setFirstPassword(person.accountId(), entry.password())
                                    .fold(id -> true, reasons::addAll);
                        },
                        reasons::addAll);
    }

    /** The place services speak of "name" and "code"; this form has several of each. */
    private static List<Refusal> renamed(List<Refusal> refusals, String code, String codeField, String nameField) {
        return refusals.stream()
                .map(refusal -> refusal.field().equals("name")
                        ? new Refusal(nameField, refusal.messageKey(), refusal.arguments())
                        : !code.isEmpty() && refusal.field().equals(code)
                                ? new Refusal(codeField, refusal.messageKey(), refusal.arguments())
                                : refusal)
                .distinct()
                .toList();
    }
}
