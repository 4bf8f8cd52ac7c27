package org.scrubline.signoff;

import java.util.Optional;

/** A record somebody asked to be void, and what a second person decided. */
public record VoidFile(Statement request, Optional<Statement> decision) {

    /** Nobody has decided yet. */
    public boolean pending() {
        return decision.isEmpty();
    }

    public boolean confirmed() {
        return decision.filter(decided -> decided.kind() == RecordEvent.VOID_CONFIRMED)
                .isPresent();
    }
}
