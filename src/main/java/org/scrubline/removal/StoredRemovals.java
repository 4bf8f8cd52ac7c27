package org.scrubline.removal;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.scrubline.people.People;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.removal.RemovalIntent.Act;
import org.springframework.stereotype.Service;

/** Recognises the person before any transaction begins: a slow password hash must not hold a connection. */
@Service
class StoredRemovals implements Removals {

    private final RemovalDesk desk;
    private final People people;
    private final Accounts accounts;

    StoredRemovals(RemovalDesk desk, People people, Accounts accounts) {
        this.desk = desk;
        this.people = people;
        this.accounts = accounts;
    }

    @Override
    public List<EndedTerm> ended(SignedIn who, UUID programme) {
        return desk.ended(who, programme);
    }

    @Override
    public List<RemovalFile> files(SignedIn who, UUID programme) {
        return desk.files(who, programme);
    }

    @Override
    public Attempt<UUID> ask(SignedIn who, UUID programme, UUID trainee, String reason, Credential credential) {
        desk.files(who, programme);
        String why = FreeText.tidy(reason);
        return confirmed(
                who,
                credential,
                RemovalIntent.of(Act.REMOVAL_ASKED, trainee),
                how -> desk.ask(who, programme, trainee, why, how));
    }

    @Override
    public Attempt<UUID> confirm(SignedIn who, UUID request, Credential credential) {
        desk.file(who, request);
        return confirmed(
                who,
                credential,
                RemovalIntent.of(Act.REMOVAL_CONFIRMED, request),
                how -> desk.confirm(who, request, how));
    }

    private Attempt<UUID> confirmed(
            SignedIn who, Credential credential, RemovalIntent intent, Function<Recognised, Attempt<UUID>> then) {
        return shared(who)
                .map(Attempt::<UUID>refused)
                .orElseGet(() -> accounts.confirm(who.accountId(), credential, intent.challenge())
                        .fold(then, Attempt::refused));
    }

    private Optional<Refusal> shared(SignedIn who) {
        return people.signatory(who.personId())
                        .filter(signatory -> signatory.open() && !signatory.shared())
                        .isPresent()
                ? Optional.empty()
                : Optional.of(Refusal.of("refusal.removal.account"));
    }
}
