package org.scrubline.casework;

import java.time.Clock;
import java.util.Locale;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Gives a sheet another scorer, inside the caller's transaction, which has locked the case. */
@Component
class SheetHandOn {

    private final ScoreRequestStore requests;
    private final ScorerRule scorers;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final MessageSource messages;
    private final Clock clock;

    SheetHandOn(
            ScoreRequestStore requests,
            ScorerRule scorers,
            Ledger ledger,
            ApplicationEventPublisher events,
            MessageSource messages,
            Clock clock) {
        this.requests = requests;
        this.scorers = scorers;
        this.ledger = ledger;
        this.events = events;
        this.messages = messages;
        this.clock = clock;
    }

    /** The reason kept when a code was used, in the one language records are kept in. */
    String byCode() {
        return messages.getMessage("hand-off.reason", null, Locale.ENGLISH);
    }

    /** False, with nothing written, when the sheet was touched or given away in the meantime. */
    boolean apply(SignedIn by, SurgicalCase found, CaseFile.ScoreRequest request, UUID to, String why) {
        UUID from = request.scorer().id();
        UUID sheet = request.sheetId();
        if (!requests.handOn(sheet, from, to, clock.instant())) {
            return false;
        }
        UUID note = requests.noteHandOn(sheet, from, to, by.personId(), why, clock.instant());
        events.publishEvent(
                CaseChanged.of("sheet-handed-on", by, found, request.trainee().id())
                        .because(why)
                        .from(request.scorer().name())
                        .to(scorers.name(to)));
        ledger.append(LeafKind.HANDED_ON, note);
        return true;
    }

    /** The same with what is on the sheet; the caller holds it and has seen it open. */
    void withContent(SignedIn by, SurgicalCase found, OpenSheets.Held held, UUID to, String why) {
        requests.handOver(held.sheetId(), to, clock.instant());
        UUID note = requests.noteHandOver(held, to, by.personId(), why, clock.instant());
        events.publishEvent(CaseChanged.of("draft-handed-over", by, found, held.traineeId())
                .because(why)
                .from(scorers.name(held.scorerId()))
                .to(scorers.name(to)));
        ledger.append(LeafKind.HANDED_ON, note);
    }
}
