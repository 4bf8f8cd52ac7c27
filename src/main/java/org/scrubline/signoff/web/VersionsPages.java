package org.scrubline.signoff.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.ContestFile;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.RecordHistory;
import org.scrubline.signoff.SheetContent;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Statement;
import org.scrubline.signoff.VoidFile;
import org.scrubline.signoff.web.VersionsView.Band;
import org.scrubline.signoff.web.VersionsView.Draft;
import org.scrubline.signoff.web.VersionsView.Entry;
import org.scrubline.signoff.web.VersionsView.Link;
import org.springframework.stereotype.Component;

/** Says which versions a record has, which one counts, and what may be done with it. */
@Component
class VersionsPages {

    /** Path and order of what a reader may do on the record. */
    private static final Map<RecordEvent, String> PATHS = Map.of(
            RecordEvent.VERSION_OPENED, "new-version",
            RecordEvent.CONTEST_OPENED, "contest",
            RecordEvent.VOID_CONFIRMED, "void/decision",
            RecordEvent.VOID_ASKED, "void",
            RecordEvent.DELEGATE_NAMED, "delegate");

    private final RecordWords words;
    private final MarkWords marks;

    VersionsPages(RecordWords words, MarkWords marks) {
        this.words = words;
        this.marks = marks;
    }

    VersionsView of(SignedIn reader, RecordHistory history, SignedSheet shown) {
        return new VersionsView(
                band(history, shown),
                history.voided().isPresent()
                        ? List.of()
                        : marks.of(history.newest().marks()),
                entries(history, shown),
                history.voidWaiting().map(this::waiting).orElse(null),
                history.open()
                        .map(open -> words.say(
                                "signoff.version.writing",
                                open.versionNo(),
                                history.writer(),
                                words.at(open.openedAt(), shown.signedZone())))
                        .orElse(null),
                draft(history, shown),
                declined(history),
                history.delegates().stream().map(this::delegate).toList(),
                history.contests().stream().map(this::contest).toList(),
                next(history));
    }

    private @Nullable Band band(RecordHistory history, SignedSheet shown) {
        int count = history.count();
        Optional<VoidFile> voided = history.voided();
        if (voided.isPresent()) {
            Statement request = voided.get().request();
            return new Band(
                    words.say("signoff.band.void", shown.versionNo(), count),
                    words.say(
                            "signoff.band.void.text",
                            ground(request),
                            request.content().text()),
                    null);
        }
        int newest = history.newest().versionNo();
        if (shown.versionNo() == newest) {
            return null;
        }
        return new Band(
                words.say("signoff.band.older", shown.versionNo(), count, newest),
                words.say("signoff.band.older.text"),
                "/signed/" + history.newest().id());
    }

    private List<Entry> entries(RecordHistory history, SignedSheet shown) {
        List<Entry> entries = new ArrayList<>();
        SignedSheet before = null;
        for (SignedSheet version : history.versions()) {
            entries.add(version(history, version, before, shown));
            before = version;
        }
        history.voided().ifPresent(voided -> entries.add(voided(history, voided)));
        return entries;
    }

    private Entry version(RecordHistory history, SignedSheet version, @Nullable SignedSheet before, SignedSheet shown) {
        SheetContent content = SignedContent.read(version.content()).reviewed();
        boolean counts = history.voided().isEmpty() && version.equals(history.newest());
        return new Entry(
                words.say("signoff.version", version.versionNo()),
                version.signerName(),
                words.say("role." + version.signerRole()),
                words.at(version.signedAt(), version.signedZone()),
                content.signer().meaning(),
                content.replaces() == null ? null : content.replaces().reason(),
                counts ? words.say("signoff.version.counts") : null,
                version.id().equals(shown.id()) ? null : "/signed/" + version.id(),
                before == null
                        ? null
                        : new Link(
                                "/signed/" + before.id() + "/compare/" + version.id(),
                                words.say("signoff.compare.link", before.versionNo(), version.versionNo())));
    }

    private Entry voided(RecordHistory history, VoidFile voided) {
        Statement request = voided.request();
        Statement decision = voided.decision().orElseThrow();
        SheetContent.Signer signer = decision.content().signer();
        return new Entry(
                words.say("signoff.version.void", history.count()),
                signer.name(),
                words.say("role." + signer.role()),
                words.at(decision.content().signedAt(), decision.content().signedZone()),
                signer.meaning(),
                words.say(
                        "signoff.void.because",
                        request.content().signer().name(),
                        words.say("role." + request.content().signer().role()),
                        words.at(request.content().signedAt(), request.content().signedZone()),
                        ground(request),
                        request.content().text()),
                null,
                null,
                null);
    }

    String waiting(VoidFile waiting) {
        return said("signoff.void.waiting", waiting.request(), ground(waiting.request()));
    }

    private List<String> declined(RecordHistory history) {
        return history.voids().stream()
                .filter(asked -> !asked.pending() && !asked.confirmed())
                .flatMap(asked -> Stream.of(
                        said("signoff.void.was-asked", asked.request(), ground(asked.request())),
                        said("signoff.void.was-declined", asked.decision().orElseThrow(), "")))
                .toList();
    }

    private String delegate(Statement named) {
        SheetContent.Named person = named.content().person();
        return said("signoff.delegate.named", named, person == null ? "" : person.name());
    }

    /** Who said it, in which role, when, what it is about, and why. */
    private String said(String key, Statement statement, String what) {
        SheetContent.Signer signer = statement.content().signer();
        return words.say(
                key,
                signer.name(),
                words.say("role." + signer.role()),
                words.at(statement.content().signedAt(), statement.content().signedZone()),
                what,
                statement.content().text());
    }

    private String ground(Statement request) {
        return words.say("signoff.ground." + request.content().ground());
    }

    private Link contest(ContestFile contest) {
        return new Link(
                "/contests/" + contest.id(),
                words.say(
                        "signoff.contest.line",
                        contest.opened().content().record().version(),
                        words.at(
                                contest.opened().content().signedAt(),
                                contest.opened().content().signedZone()),
                        words.say("signoff.contest.state." + contest.state())));
    }

    private static @Nullable Draft draft(RecordHistory history, SignedSheet shown) {
        return history.may().contains(RecordEvent.VERSION_DROPPED)
                ? new Draft(
                        "/sheets/" + shown.sheetId(),
                        "/signed/" + history.newest().id() + "/new-version/drop")
                : null;
    }

    private List<Link> next(RecordHistory history) {
        String record = "/signed/" + history.newest().id() + "/";
        return Stream.of(RecordEvent.values())
                .filter(history.may()::contains)
                .filter(PATHS::containsKey)
                .map(event -> new Link(record + PATHS.get(event), words.say("signoff.next." + event.name())))
                .toList();
    }
}
