package org.scrubline.outcome;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** What is counted in the first two weeks. Which pressure counts as too low is a setting of the programme. */
public enum EarlyEvent {
    LEAK {
        @Override
        @Nullable
        Boolean in(Visit visit, int lowAt) {
            Visit.LeakTest test = visit.leakTest();
            return (test == null || test == Visit.LeakTest.NOT_DONE) ? null : test == Visit.LeakTest.LEAKS;
        }
    },
    LOW_PRESSURE {
        @Override
        Boolean in(Visit visit, int lowAt) {
            return visit.pressure().iop() <= lowAt;
        }
    },
    FLAT_CHAMBER {
        @Override
        @Nullable
        Boolean in(Visit visit, int lowAt) {
            return visit.chamber() == null ? null : visit.chamber() == Visit.Chamber.FLAT;
        }
    },
    EFFUSION {
        @Override
        @Nullable
        Boolean in(Visit visit, int lowAt) {
            return visit.effusion();
        }
    };

    /** Days after the operation that are early (a national survey of 1996, read as an abstract). */
    public static final int DAYS = 14;

    /** Null where nobody wrote it down. */
    abstract @Nullable Boolean in(Visit visit, int lowAt);

    /**
     * Whether it was found at an early visit; empty when no early visit says anything about it.
     *
     * @param lowAt mmHg at which a pressure is too low
     */
    public Optional<Boolean> of(CaseOutcome outcome, int lowAt) {
        LocalDate last = outcome.operated().plusDays(DAYS);
        Function<Visit, Optional<Boolean>> said = visit -> Optional.ofNullable(in(visit, lowAt));
        List<Boolean> known = outcome.visits().stream()
                .map(CaseOutcome.Placed::visit)
                .filter(visit -> !visit.day().isAfter(last))
                .flatMap(visit -> said.apply(visit).stream())
                .toList();
        return known.isEmpty() ? Optional.empty() : Optional.of(known.contains(true));
    }
}
