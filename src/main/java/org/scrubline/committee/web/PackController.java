package org.scrubline.committee.web;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.Decision;
import org.scrubline.committee.DecisionFile;
import org.scrubline.committee.Decisions;
import org.scrubline.committee.Meeting;
import org.scrubline.committee.Meetings;
import org.scrubline.committee.Pack;
import org.scrubline.committee.Packs;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Receipt;
import org.scrubline.ledger.Receipts;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.PagePrint;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.TakesAlong.Size;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** The frozen evidence about a trainee: to read, to check, and to take along. */
@Controller
@RequestMapping("/meetings/{meeting}/trainees/{trainee}")
class PackController {

    private final Packs packs;
    private final Meetings meetings;
    private final Decisions decisions;
    private final Receipts receipts;
    private final PackPages pages;
    private final CommitteeSeen seen;
    private final PagePrint print;
    private final CommitteeWords words;

    PackController(
            Packs packs,
            Meetings meetings,
            Decisions decisions,
            Receipts receipts,
            PackPages pages,
            CommitteeSeen seen,
            PagePrint print,
            CommitteeWords words) {
        this.packs = packs;
        this.meetings = meetings;
        this.decisions = decisions;
        this.receipts = receipts;
        this.pages = pages;
        this.seen = seen;
        this.print = print;
        this.words = words;
    }

    /** {@code again} asks to make it again from the records. */
    @GetMapping
    ModelAndView read(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID meeting,
            @PathVariable UUID trainee,
            @RequestParam(defaultValue = "false") boolean again) {
        Pack pack = packs.read(who, meeting, trainee);
        seen.pack(who, pack);
        EvidencePage.Rebuilt rebuilt = again ? rebuilt(packs.rebuild(who, meeting, trainee)) : null;
        return new ModelAndView("committee/evidence", "page", page(who, pack, rebuilt));
    }

    @GetMapping("/pack.json")
    @TakesAlong(Size.ONE)
    ResponseEntity<byte[]> json(
            @AuthenticationPrincipal SignedIn who, @PathVariable UUID meeting, @PathVariable UUID trainee) {
        Pack pack = packs.read(who, meeting, trainee);
        seen.pack(who, pack);
        return file("pack-" + pack.id() + ".json", MediaType.APPLICATION_JSON, bytes(pack.json()));
    }

    @GetMapping("/pack.pdf")
    @TakesAlong(Size.ONE)
    ResponseEntity<byte[]> pdf(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID meeting,
            @PathVariable UUID trainee,
            Locale locale) {
        Pack pack = packs.read(who, meeting, trainee);
        seen.pack(who, pack);
        Receipt receipt = receipts.of(LeafKind.EVIDENCE_PACK, pack.id());
        Map<String, Object> model =
                Map.of("page", page(who, pack, null), "receipt", receipt, "organisation", who.organisationName());
        byte[] pdf =
                print.pdf("committee/evidence-print", model, locale, "receipt-" + pack.id() + ".json", receipt.json());
        return file("pack-" + pack.id() + ".pdf", MediaType.APPLICATION_PDF, pdf);
    }

    private EvidencePage page(SignedIn who, Pack pack, EvidencePage.@Nullable Rebuilt rebuilt) {
        Optional<Meeting> seenMeeting = meeting(who, pack.meetingId());
        List<Decision> on = decisions(who, pack);
        return pages.of(
                pack,
                new PackPages.Around(
                        on,
                        seenMeeting
                                .map(one -> PackPages.write(
                                        one, pack.traineeId(), who.personId(), words.say("committee.decision.write")))
                                .orElse(null),
                        seenMeeting.map(one -> Links.meeting(one.id())).orElse("/decisions"),
                        rebuilt));
    }

    private List<Decision> decisions(SignedIn who, Pack pack) {
        List<Decision> inMeeting = meeting(who, pack.meetingId())
                .map(one -> decisions.ofMeeting(who, one.id()))
                .orElseGet(() -> decisions.concerning(who).stream()
                        .map(DecisionFile::decision)
                        .toList());
        return inMeeting.stream()
                .filter(decision -> decision.content().pack().id().equals(pack.id()))
                .toList();
    }

    private Optional<Meeting> meeting(SignedIn who, UUID id) {
        try {
            return Optional.of(meetings.read(who, id));
        } catch (NotFound notTheirs) {
            return Optional.empty();
        }
    }

    private EvidencePage.Rebuilt rebuilt(Packs.Rebuilt rebuilt) {
        return new EvidencePage.Rebuilt(
                rebuilt.same(),
                words.say(rebuilt.same() ? "committee.rebuilt.same" : "committee.rebuilt.differs", rebuilt.hash()));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    static ResponseEntity<byte[]> file(String name, MediaType type, byte[] bytes) {
        return ResponseEntity.ok()
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment().filename(name).build().toString())
                .contentType(type)
                .body(bytes);
    }
}
