package org.scrubline.signoff;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SheetContent.Named;
import org.scrubline.signoff.SheetContent.Signer;
import org.scrubline.signoff.StatementContent.RecordReference;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Writes statements about records as their signer says them now. */
@Component
class Statements {

    private final MessageSource messages;
    private final Clock clock;

    Statements(MessageSource messages, Clock clock) {
        this.messages = messages;
        this.clock = clock;
    }

    /**
     * The meaning is signed in the one language records are kept in, whatever the reader's.
     *
     * @throws org.scrubline.platform.StaleData when a passkey signed something else than this says
     */
    Statement write(SignedIn who, Role role, RecordEvent kind, SignedSheet about, Said said) {
        String meaning = "signoff.meaning." + kind.name();
        Statement answered = said.answers();
        StatementContent content = new StatementContent(
                StatementContent.SCHEMA,
                kind,
                new Named(who.tenantId(), who.organisationName()),
                about.sheetId(),
                new RecordReference(about.id(), about.versionNo(), about.contentHash()),
                answered == null ? null : answered.reference(),
                said.person(),
                said.ground(),
                said.steps(),
                said.text(),
                new Signer(
                        who.personId(),
                        who.printedName(),
                        role.name(),
                        meaning,
                        messages.getMessage(meaning, null, Locale.ENGLISH)),
                clock.instant().truncatedTo(ChronoUnit.MILLIS),
                about.signedZone(),
                said.how().used());
        SignedEvidence.requireIntended(said.how(), Intent.of(content), "/signed/" + about.id());
        return Statement.of(content);
    }

    /** Why a tidied reason cannot be kept, if so. */
    static Optional<Refusal> against(String field, String text, int longest) {
        int length = text.codePointCount(0, text.length());
        return length < Versions.SHORTEST_REASON
                ? Optional.of(Refusal.at(field, "signoff.refusal.reason-short", Versions.SHORTEST_REASON))
                : FreeText.narrative(field, text, longest);
    }
}
