package org.scrubline.committee.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.scrubline.committee.Act;
import org.scrubline.committee.ActContent;
import org.scrubline.committee.ActKind;
import org.scrubline.committee.Acts;
import org.scrubline.committee.DecisionFile;
import org.scrubline.committee.DecisionFile.Appeal;
import org.scrubline.committee.SignedDecision;
import org.scrubline.committee.web.DecisionPage.SaidView;
import org.scrubline.committee.web.DecisionPage.SignatureView;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SheetContent.Named;
import org.scrubline.signoff.SheetContent.Signer;
import org.springframework.stereotype.Component;

/** Makes the pages about signed decisions. */
@Component
class DecisionPages {

    private final Acts acts;
    private final DecisionViews views;
    private final DecisionWords decisions;
    private final CommitteeWords words;

    DecisionPages(Acts acts, DecisionViews views, DecisionWords decisions, CommitteeWords words) {
        this.acts = acts;
        this.views = views;
        this.decisions = decisions;
        this.words = words;
    }

    DecisionPage of(SignedIn who, DecisionFile file) {
        SignedDecision signed = file.decision().signed();
        List<ActKind> next = acts.next(who, file);
        return new DecisionPage(
                Links.decision(file.id()),
                nav(who, file),
                views.of(signed.decided()),
                state(file),
                file.appeal() == Appeal.NONE ? until(file) : null,
                signature(signed.decided().signer(), words.at(signed.signedAt(), signed.signedZone())),
                file.acts().stream().map(this::said).toList(),
                next.stream()
                        .filter(kind -> kind != ActKind.LETTER_SENT)
                        .map(kind -> Link.of(
                                Links.decision(file.id()) + "/" + path(kind), words.say("committee.next." + kind)))
                        .distinct()
                        .toList(),
                next.contains(ActKind.LETTER_SENT) ? Links.decision(file.id()) + "/letter-given" : null,
                file.decision().hash());
    }

    static String path(ActKind kind) {
        return switch (kind) {
            case APPEALED -> "appeal";
            case PANEL_NAMED -> "panel";
            case APPEAL_UPHELD -> "uphold";
            case APPEAL_NOT_UPHELD -> "not-uphold";
            case APPEAL_ENDED -> "end-appeal";
            case LETTER_SENT, SUSPENDED, REINSTATED -> throw new IllegalArgumentException(kind.name());
        };
    }

    private static String nav(SignedIn who, DecisionFile file) {
        return file.decision().traineeId().equals(who.personId()) ? "decisions" : "meetings";
    }

    List<Link> list(List<DecisionFile> files) {
        return files.stream()
                .map(file -> new Link(
                        Links.decision(file.id()),
                        decisions.title(file.decision().content()),
                        words.say(
                                "committee.decision.line",
                                decisions.answer(file.decision().content()),
                                words.day(
                                        file.decision().signed().signedAt(),
                                        file.decision().signed().signedZone()),
                                state(file)),
                        null))
                .toList();
    }

    private String state(DecisionFile file) {
        if (file.replaced()) {
            return words.say("committee.state.replaced");
        }
        return words.say("committee.state." + file.appeal());
    }

    private String until(DecisionFile file) {
        ZoneId zone = file.decision().signed().signedZone();
        return file.appealUntil()
                .map(until -> words.say("committee.appeal.until", words.at(until, zone)))
                .orElseGet(() -> words.say("committee.appeal.not-begun"));
    }

    SaidView said(Act act) {
        ActContent content = act.content();
        List<String> facts = new ArrayList<>();
        if (!content.persons().isEmpty()) {
            facts.add(words.say(
                    "committee.fact.panel",
                    content.persons().stream().map(Named::name).collect(Collectors.joining(", "))));
        }
        if (content.until() != null) {
            facts.add(words.say("committee.appeal.until", words.at(content.until(), content.signedZone())));
        }
        if (content.ground() != null) {
            facts.add(words.say("committee.ground." + content.ground()));
        }
        return new SaidView(
                words.say("committee.act." + content.kind()),
                facts,
                CommitteeWords.paragraphs(content.text()),
                signature(content.signer(), words.at(content.signedAt(), content.signedZone())));
    }

    private SignatureView signature(Signer signer, String at) {
        return new SignatureView(signer.name(), words.say("role." + signer.role()), at, signer.meaning());
    }

    /** {@code evidence} is the page of the frozen evidence the decision rests on. */
    LetterPage letter(DecisionFile file, EvidencePage evidence) {
        SignedDecision signed = file.decision().signed();
        Signer signer = signed.decided().signer();
        return new LetterPage(
                Links.decision(file.id()) + "/letter",
                Links.decision(file.id()),
                signed.decided().organisation().name(),
                signed.decided().programme().name(),
                words.day(
                        file.letter().map(act -> act.content().signedAt()).orElse(signed.signedAt()),
                        signed.signedZone()),
                views.of(signed.decided()),
                used(evidence),
                evidence.notes(),
                change(file, evidence),
                until(file),
                signer.name(),
                words.say("role." + signer.role()),
                words.at(signed.signedAt(), signed.signedZone()),
                signer.meaning(),
                file.decision().hash());
    }

    private List<String> used(EvidencePage evidence) {
        return evidence.facts().stream()
                .map(fact -> words.say("committee.fact", String.valueOf(fact.text()), String.valueOf(fact.value())))
                .toList();
    }

    /** What is not met for the next level the evidence was asked about, and for that of the decision. */
    private List<LetterPage.Change> change(DecisionFile file, EvidencePage evidence) {
        String family = decisions.family(file.decision().content());
        List<LetterPage.Change> lines = evidence.families().stream()
                .filter(one -> one.title().equals(family))
                .flatMap(one -> one.levels().stream())
                .filter(level -> !level.supports())
                .map(level -> new LetterPage.Change(
                        words.say("committee.change.line", level.title(), level.gate() == null ? "" : level.gate()),
                        decisions.unmet(level)))
                .toList();
        return lines.isEmpty() ? List.of(new LetterPage.Change(words.say("committee.change.none"), List.of())) : lines;
    }
}
