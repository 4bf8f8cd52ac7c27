package org.scrubline.outcome;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.platform.Refusal;

/** What one person enters about one case at one time; each entry is judged by what the ones before it left. */
final class Sitting {

    private final UUID who;
    private final LocalDate operated;
    private final ZoneId zone;
    private final Instant now;
    private final List<OutcomeEntry> entries;
    private final int before;

    Sitting(UUID who, LocalDate operated, ZoneId zone, Instant now, List<OutcomeEntry> entries) {
        this.who = who;
        this.operated = operated;
        this.zone = zone;
        this.now = now;
        this.entries = new ArrayList<>(entries);
        this.before = entries.size();
    }

    /** Every reason why not; none for a form that was sent twice. */
    List<Refusal> against(Entering entering) {
        return same(entering).isPresent()
                ? List.of()
                : new OutcomeRule(outcome(), LocalDate.ofInstant(now, zone)).against(entering);
    }

    /** Adds what nothing speaks against; what was there already is answered as it is. */
    OutcomeEntry add(UUID caseId, Entering entering) {
        return same(entering).orElseGet(() -> {
            OutcomeEntry entry = new OutcomeEntry(
                    UUID.randomUUID(),
                    caseId,
                    entries.size() + 1,
                    replaced(entering),
                    entering.content(),
                    entering.source(),
                    who,
                    now);
            entries.add(entry);
            return entry;
        });
    }

    /** What has to be stored. */
    List<OutcomeEntry> added() {
        return List.copyOf(entries.subList(before, entries.size()));
    }

    private CaseOutcome outcome() {
        return CaseOutcome.of(operated, entries);
    }

    private Optional<OutcomeEntry> same(Entering entering) {
        return entries.stream()
                .skip(Math.max(0, entries.size() - 1))
                .filter(last -> last.enteredBy().equals(who))
                .filter(last -> last.content().equals(entering.content()) && last.source() == entering.source())
                .filter(last ->
                        entering.replaces() == null || entering.replaces().equals(last.replaces()))
                .findFirst();
    }

    private @Nullable Integer replaced(Entering entering) {
        if (entering.replaces() != null) {
            return entering.replaces();
        }
        if (entering.content() instanceof Baseline) {
            return outcome().baselineEntry().map(OutcomeEntry::ordinal).orElse(null);
        }
        return entering.content() instanceof NoVisit none
                ? outcome().absence(none.window()).map(OutcomeEntry::ordinal).orElse(null)
                : null;
    }
}
