package org.scrubline.casework.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseFile;
import org.scrubline.casework.CaseState;
import org.scrubline.casework.Cases;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Makes the page of a case for its reader. */
@Component
class CasePages {

    private final Cases cases;
    private final CaseWords words;

    CasePages(Cases cases, CaseWords words) {
        this.cases = cases;
        this.words = words;
    }

    CasePage page(SignedIn who, CaseFile file) {
        SurgicalCase found = file.surgicalCase();
        return new CasePage(
                title(found),
                facts(found),
                found.factors().stream().map(words::factor).toList(),
                words.say(found.complexitySetLate() ? "case.complexity.late" : "case.complexity.in-time"),
                remarks(file),
                words.say(ahead(found) ? "case.people.ahead" : "case.people"),
                file.trainees().stream()
                        .map(trainee -> participant(trainee, ahead(found)))
                        .toList(),
                file.requests().stream()
                        .map(request -> sheet(who, found, request))
                        .toList(),
                next(who, file),
                file.requests().isEmpty() ? empty(file) : null);
    }

    private static boolean ahead(SurgicalCase found) {
        return found.state() == CaseState.PLANNED || found.state() == CaseState.STARTED;
    }

    private String participant(CaseFile.Participant trainee, boolean ahead) {
        String part = words.say("case.participant", trainee.name(), words.part(trainee.claimedPart(), ahead));
        return trainee.goal().isEmpty() ? part : words.say("case.participant.goal", part, trainee.goal());
    }

    String title(SurgicalCase found) {
        return words.say("case.title", found.reference(), words.procedure(found.procedureCode()));
    }

    private List<CasePage.Fact> facts(SurgicalCase found) {
        return List.of(
                new CasePage.Fact(null, words.say(found.eye())),
                new CasePage.Fact(null, words.when(found)),
                new CasePage.Fact(null, words.site(found.siteId())),
                new CasePage.Fact(null, words.say("case.band.short", found.band())),
                new CasePage.Fact(null, words.say("case.supervision.planned", words.say(found.plannedSupervision()))));
    }

    private List<String> remarks(CaseFile file) {
        SurgicalCase found = file.surgicalCase();
        List<String> remarks = new ArrayList<>();
        if (found.abandonedReason() != null) {
            remarks.add(words.say("case.remark.abandoned", found.abandonedReason()));
        }
        if (found.convertedTo() != null) {
            remarks.add(words.say("case.remark.converted", words.procedure(found.convertedTo())));
        }
        if (found.secondEyeOf() != null) {
            remarks.add(words.say(
                    "case.remark.second-eye", cases.get(found.secondEyeOf()).reference()));
        }
        return remarks;
    }

    private String empty(CaseFile file) {
        return file.surgicalCase().state() == CaseState.PLANNED
                ? words.say(
                        "case.sheets.planned",
                        file.plannedScorer().orElseThrow().name())
                : words.say("case.sheets.none");
    }

    private CasePage.SheetLine sheet(SignedIn who, SurgicalCase found, CaseFile.ScoreRequest request) {
        boolean running = found.endedAt() == null && request.state() == SheetState.OPEN;
        String text = words.say(
                running ? "case.sheet.running" : "case.sheet." + request.state(),
                request.scorer().name(),
                request.trainee().name(),
                words.when(found),
                Optional.ofNullable(request.removedAfter()).orElse(0));
        return new CasePage.SheetLine(text, link(who, request));
    }

    private @Nullable Link link(SignedIn who, CaseFile.ScoreRequest request) {
        String sheet = "/sheets/" + request.sheetId();
        if (request.state() == SheetState.REMOVED) {
            return null;
        }
        if (request.state() != SheetState.OPEN) {
            return new Link(sheet + "/signed", words.say("case.sheet.read"), null, null);
        }
        return request.scorer().id().equals(who.personId())
                ? new Link(sheet, words.say("case.sheet.score"), null, null)
                : null;
    }

    private List<Link> next(SignedIn who, CaseFile file) {
        SurgicalCase found = file.surgicalCase();
        List<Link> next = new ArrayList<>();
        boolean planned = found.state() == CaseState.PLANNED;
        boolean settled = file.requests().stream().anyMatch(CaseFile.ScoreRequest::settled);
        if (planned) {
            next.add(change(found, CaseChange.PLAN));
            next.add(change(found, CaseChange.START));
        }
        if (planned || found.state() == CaseState.STARTED) {
            next.add(change(found, CaseChange.END));
        }
        if (file.hasTrainee(who.personId()) && !settled) {
            next.add(change(found, CaseChange.GOAL));
        }
        if (HandOffController.mayOffer(who, file)) {
            next.add(to(found, "hand-off", words.say("hand-off.offer"), words.say("hand-off.offer.note")));
        }
        if (file.requests().stream().anyMatch(request -> request.trainee().id().equals(who.personId()))) {
            next.add(to(found, "self-score", words.say("case.self-score"), words.say("case.self-score.note")));
        }
        if (found.state() == CaseState.ENDED && words.judgedByOutcome(found)) {
            next.add(new Link(
                    "/outcomes/" + found.id(), words.say("case.outcome"), words.say("case.outcome.note"), null));
        }
        if (found.endedAt() != null) {
            next.add(change(found, CaseChange.SCORERS));
            next.add(change(found, CaseChange.TRAINEES));
        }
        if (file.requests().stream().anyMatch(CaseFile.ScoreRequest::untouched)) {
            next.add(change(found, CaseChange.HAND_ON));
        }
        if (!settled && found.state() != CaseState.ABANDONED) {
            next.add(change(found, CaseChange.ABANDON));
        }
        if (!settled && found.state() == CaseState.ENDED) {
            next.add(change(found, CaseChange.CONVERT));
            next.add(new Link(
                    "/cases/new?secondEyeOf=" + found.id(),
                    words.say("case.other-eye"),
                    words.say("case.other-eye.note"),
                    null));
        }
        return next;
    }

    private Link change(SurgicalCase found, CaseChange change) {
        String key = "case.change." + change.path();
        return to(found, change.path(), words.say(key), words.say(key + ".note"));
    }

    private static Link to(SurgicalCase found, String path, String label, String note) {
        return new Link("/cases/" + found.id() + "/" + path, label, note, null);
    }
}
