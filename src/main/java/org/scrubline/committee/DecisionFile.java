package org.scrubline.committee;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.signoff.SheetContent.Named;

/**
 * A decision with everything said about it since, oldest first.
 *
 * @param replaced whether a later decision took its place
 */
public record DecisionFile(Decision decision, List<Act> acts, boolean replaced) {

    /** How far an appeal is. */
    public enum Appeal {
        NONE,
        /** Appealed; a director names who hears it. */
        OPEN,
        /** The panel named has not decided. */
        HEARD,
        UPHELD,
        NOT_UPHELD,
        /** Ended by the trainee. */
        ENDED;

        public boolean waits() {
            return this == OPEN || this == HEARD;
        }
    }

    public DecisionFile {
        acts = List.copyOf(acts);
    }

    public UUID id() {
        return decision.id();
    }

    /** The newest statement of that kind. */
    public Optional<Act> said(ActKind kind) {
        return acts.stream().filter(act -> act.kind() == kind).reduce((older, newer) -> newer);
    }

    public Optional<Act> letter() {
        return said(ActKind.LETTER_SENT);
    }

    public Appeal appeal() {
        if (said(ActKind.APPEAL_UPHELD).isPresent()) {
            return Appeal.UPHELD;
        }
        if (said(ActKind.APPEAL_NOT_UPHELD).isPresent()) {
            return Appeal.NOT_UPHELD;
        }
        if (said(ActKind.APPEAL_ENDED).isPresent()) {
            return Appeal.ENDED;
        }
        if (said(ActKind.PANEL_NAMED).isPresent()) {
            return Appeal.HEARD;
        }
        return said(ActKind.APPEALED).isPresent() ? Appeal.OPEN : Appeal.NONE;
    }

    /** Who hears the appeal. */
    public List<Named> panel() {
        return said(ActKind.PANEL_NAMED).map(act -> act.content().persons()).orElse(List.of());
    }

    public boolean hears(UUID person) {
        return panel().stream().anyMatch(one -> one.id().equals(person));
    }

    /** Until when the trainee may appeal; empty while the letter has not been given, and the time not begun. */
    public Optional<Instant> appealUntil() {
        return letter().map(act -> act.content().until());
    }
}
