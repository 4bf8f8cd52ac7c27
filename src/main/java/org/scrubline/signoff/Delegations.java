package org.scrubline.signoff;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.people.Person;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Who was named to sign new versions in place of somebody who left. */
@Component
class Delegations {

    private final DelegateQueries queries;
    private final StatementStore store;
    private final Statements statements;
    private final SignedEvidence evidence;

    Delegations(DelegateQueries queries, StatementStore store, Statements statements, SignedEvidence evidence) {
        this.queries = queries;
        this.store = store;
        this.statements = statements;
        this.evidence = evidence;
    }

    /** Oldest first. */
    List<Statement> of(UUID sheet) {
        return queries.ofSheet(sheet);
    }

    /** The naming in force when it is the very same, sent again. */
    Optional<Statement> same(Standing standing, UUID delegate, String reason) {
        return of(standing.sheet().id()).stream()
                .reduce((older, newer) -> newer)
                .filter(named -> standing.isAuthority(delegate)
                        && named.id().equals(standing.authority().grantedBy())
                        && named.content().text().equals(reason));
    }

    Statement name(SignedIn director, Standing standing, Person delegate, Spoken spoken) {
        Statement named = statements.write(
                director,
                Role.DIRECTOR,
                RecordEvent.DELEGATE_NAMED,
                standing.newest(),
                Said.of(spoken).naming(delegate));
        store.delegate(named);
        evidence.fix(LeafKind.VERSION_DELEGATE, named.id(), spoken.how());
        return named;
    }
}
