package org.scrubline.signoff.web;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.ClosedSheet;
import org.scrubline.signoff.LateRelease;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SignedLine;
import org.scrubline.signoff.VersionSignature;
import org.scrubline.signoff.VersionSigning;
import org.springframework.stereotype.Component;

/** Puts into words what a director sees of signing. */
@Component
class OpenSignaturePages {

    private final VersionSigning signing;
    private final SignedLines lines;
    private final RecordWords words;
    private final Clock clock;

    OpenSignaturePages(VersionSigning signing, SignedLines lines, RecordWords words, Clock clock) {
        this.signing = signing;
        this.lines = lines;
        this.words = words;
        this.clock = clock;
    }

    /** A sheet closed by time; {@code released} says by whom and why, null while it is not. */
    record ClosedView(
            UUID id,
            String href,
            String title,
            String note,
            String age,
            @Nullable String released) {}

    /** A record that waits; {@code refusals} say who could not countersign it and why. */
    record AwaitedView(SignedLines.ListLine line, List<String> refusals) {}

    List<ClosedView> closed(List<ClosedSheet> sheets) {
        return sheets.stream().map(this::closed).toList();
    }

    ClosedView closed(ClosedSheet sheet) {
        LateRelease release = sheet.released();
        return new ClosedView(
                sheet.sheetId(),
                "/late-releases/" + sheet.sheetId(),
                words.say("signoff.closed.title", sheet.traineeName(), sheet.procedure()),
                words.say(
                        "signoff.closed.note",
                        sheet.reference(),
                        words.at(sheet.caseEndedAt(), sheet.zone()),
                        sheet.scorerName()),
                words.say(
                        "signoff.closed.age",
                        Duration.between(sheet.caseEndedAt(), clock.instant()).toDays()),
                release == null
                        ? null
                        : words.say(
                                "signoff.times.released.by",
                                release.releasedName(),
                                words.say("role." + release.releasedRole()),
                                words.at(release.releasedAt(), release.releasedZone()),
                                release.reason()));
    }

    List<AwaitedView> awaited(SignedIn director) {
        List<SignedLine> waiting = signing.awaited(director);
        List<SignedLines.ListLine> said = lines.of(waiting);
        return IntStream.range(0, waiting.size())
                .mapToObj(i -> new AwaitedView(said.get(i), refusals(director, waiting.get(i))))
                .toList();
    }

    private List<String> refusals(SignedIn director, SignedLine line) {
        return signing.of(director, line.id()).stream()
                .filter(signature -> signature.event() == RecordEvent.COUNTERSIGN_REFUSED)
                .map(this::refusal)
                .toList();
    }

    private String refusal(VersionSignature signature) {
        return words.say(
                "signoff.countersign.refused",
                signature.signerName(),
                words.say("role." + signature.signerRole()),
                words.at(signature.signedAt(), signature.signedZone()),
                signature.words());
    }
}
