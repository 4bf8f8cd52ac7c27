package org.scrubline.signoff;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.SignedIn;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredSigningStatements implements SigningStatements {

    private final SigningStatementStore store;
    private final MessageSource messages;
    private final Ledger ledger;
    private final Clock clock;

    StoredSigningStatements(SigningStatementStore store, MessageSource messages, Ledger ledger, Clock clock) {
        this.store = store;
        this.messages = messages;
        this.ledger = ledger;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public boolean accepted(UUID personId) {
        return store.accepted(personId, VERSION);
    }

    @Override
    public String text() {
        return messages.getMessage("signoff.statement.text", null, Locale.ENGLISH);
    }

    @Override
    public void accept(SignedIn who) {
        store.insert(who, VERSION, text(), clock.instant().truncatedTo(ChronoUnit.MILLIS))
                .ifPresent(id -> ledger.append(LeafKind.SIGNING_STATEMENT, id));
    }
}
