package org.scrubline.casework;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.retention.Retention;
import org.scrubline.retention.RetentionTerms;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Tells scorers of open sheets nobody works on any more, and removes those they were told of in time. */
@Service
@Transactional
class OldSheets {

    private final OldSheetStore store;
    private final Retention retention;
    private final People people;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    OldSheets(
            OldSheetStore store,
            Retention retention,
            People people,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.retention = retention;
        this.people = people;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    /** Goes through the open sheets of the organisation once. A sheet somebody changes meanwhile is waited for. */
    public void review() {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        for (Programme programme : people.programmes()) {
            RetentionTerms terms = retention.terms(programme.id());
            Instant old = now.minus(Duration.ofDays(terms.draftDays())).plus(RemovalDates.NOTICE);
            store.lock(programme.id(), old).forEach(sheet -> review(sheet, programme, terms, old, now));
        }
    }

    private void review(OldSheet sheet, Programme programme, RetentionTerms terms, Instant old, Instant now) {
        Instant told = sheet.toldAt();
        if (sheet.touchedAt().isAfter(old) || retention.held(sheet.traineeId())) {
            store.tell(sheet.id(), null);
        } else if (told == null) {
            store.tell(sheet.id(), now);
            LocalDate day = LocalDate.ofInstant(RemovalDates.of(sheet.touchedAt(), now, terms), programme.zone());
            events.publishEvent(OldSheetChanged.of("draft-warned", sheet, programme, day.toString()));
        } else if (!now.isBefore(RemovalDates.of(sheet.touchedAt(), told, terms))) {
            int days = (int) Duration.between(sheet.touchedAt(), now).toDays();
            store.remove(sheet, days, now);
            events.publishEvent(OldSheetChanged.of("draft-removed", sheet, programme, Integer.toString(days)));
            ledger.append(LeafKind.SHEET_REMOVED, sheet.id());
        }
    }
}
