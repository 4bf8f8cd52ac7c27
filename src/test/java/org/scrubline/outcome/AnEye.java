package org.scrubline.outcome;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.OutcomeEntry.Absence;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.Content;
import org.scrubline.outcome.OutcomeEntry.LostReason;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.outcome.OutcomeEntry.Source;

/** Entries about one eye for tests of pure rules; operated on 5 January 2026. */
final class AnEye {

    static final LocalDate OPERATED = LocalDate.of(2026, 1, 5);
    private static final Instant ENTERED = Instant.parse("2026-01-06T09:00:00Z");

    private final List<OutcomeEntry> entries = new ArrayList<>();

    static Visit visit(LocalDate day, double iop, int drops) {
        return new Visit(
                day,
                new Pressure(iop, drops),
                null,
                null,
                null,
                null,
                null,
                Set.of(),
                false,
                false,
                Visit.SeenBy.OTHER);
    }

    AnEye before(double iop) {
        return enter(new Baseline(OPERATED.minusDays(3), new Pressure(iop, 3), null), null);
    }

    /** Pressures at months 3, 6 and 12, without drops. */
    AnEye then(double... iop) {
        List<FollowUp> late = List.of(FollowUp.M3, FollowUp.M6, FollowUp.M12);
        for (int i = 0; i < iop.length; i++) {
            seen(late.get(i), iop[i], 0);
        }
        return this;
    }

    AnEye seen(FollowUp window, double iop, int drops) {
        return enter(visit(window.due(OPERATED), iop, drops), null);
    }

    AnEye absent(FollowUp window, Absence absence) {
        LostReason why = absence == Absence.LOST ? LostReason.MOVED : null;
        return enter(new NoVisit(window, absence, window.due(OPERATED), why), null);
    }

    AnEye enter(Content content, @Nullable Integer replaces) {
        entries.add(new OutcomeEntry(
                UUID.randomUUID(),
                new UUID(0, 1),
                entries.size() + 1,
                replaces,
                content,
                Source.CLINIC_LETTER,
                new UUID(0, 2),
                ENTERED));
        return this;
    }

    CaseOutcome outcome() {
        return CaseOutcome.of(OPERATED, entries);
    }
}
