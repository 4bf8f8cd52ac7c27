package org.scrubline.ledger.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.AskedCheck;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.EvidenceChecks;
import org.scrubline.ledger.check.CheckWords;
import org.scrubline.ledger.web.EvidencePage.CheckView;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Puts the state of the ledger into words. */
@Component
class EvidencePages {

    /** A ledger belongs to no place; the zone is named beside each time. */
    private static final ZoneId ZONE = ZoneId.of("UTC");

    private final Checkpoints checkpoints;
    private final EvidenceChecks checks;
    private final MessageSource messages;

    EvidencePages(Checkpoints checkpoints, EvidenceChecks checks, MessageSource messages) {
        this.checkpoints = checkpoints;
        this.checks = checks;
        this.messages = messages;
    }

    EvidencePage page() {
        return new EvidencePage(
                checkpoints.size(),
                checkpoints
                        .newest()
                        .map(newest -> say("ledger.checkpoint.newest", newest.size(), at(newest.issuedAt())))
                        .orElse(null),
                checkpoints.verifierKey(),
                checks.newest().map(this::check).orElse(null));
    }

    private CheckView check(AskedCheck asked) {
        Instant finished = asked.finishedAt();
        if (asked.result() == null || finished == null) {
            String key = asked.done() == 0 ? "ledger.check.waiting" : "ledger.check.running";
            return new CheckView(say(key, asked.done(), asked.leaves()), true, "", List.of(), List.of());
        }
        CheckWords words = new CheckWords((key, arguments) -> messages.getMessage(key, arguments, null, locale()));
        return new CheckView(
                say("ledger.check.finished", at(finished)),
                false,
                words.verdict(asked.result()),
                words.facts(asked.result()),
                words.findings(asked.result()));
    }

    String say(String key, @Nullable Object... arguments) {
        return messages.getMessage(key, arguments, locale());
    }

    private static String at(Instant instant) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", locale()).format(instant.atZone(ZONE));
    }

    private static Locale locale() {
        return LocaleContextHolder.getLocale();
    }
}
