package org.scrubline.committee.web;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.committee.Ballot;
import org.scrubline.committee.DecisionDraft;
import org.scrubline.committee.Decisions;
import org.scrubline.committee.Decisions.Preview;
import org.scrubline.committee.Meetings;
import org.scrubline.committee.Pack;
import org.scrubline.committee.Packs;
import org.scrubline.platform.Credential;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The chair writes a decision, reads it as it will be signed, and signs it. For anyone else these pages do not exist. */
@Controller
@RequestMapping("/meetings/{meeting}/trainees/{trainee}/decision")
class DecisionFormController {

    private final Decisions decisions;
    private final Meetings meetings;
    private final Packs packs;
    private final DecisionFormPages pages;
    private final CommitteeWords words;

    DecisionFormController(
            Decisions decisions, Meetings meetings, Packs packs, DecisionFormPages pages, CommitteeWords words) {
        this.decisions = decisions;
        this.meetings = meetings;
        this.packs = packs;
        this.pages = pages;
        this.words = words;
    }

    @GetMapping
    ModelAndView form(@AuthenticationPrincipal SignedIn who, @PathVariable UUID meeting, @PathVariable UUID trainee) {
        Pack pack = chaired(who, meeting, trainee);
        Typed typed = decisions
                .draft(who, meeting, trainee)
                .map(DecisionFormPages::typed)
                .orElseGet(() -> pages.fresh(pack));
        return form(who, pack, typed, List.of());
    }

    @PostMapping
    ModelAndView write(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID meeting,
            @PathVariable UUID trainee,
            @RequestParam MultiValueMap<String, String> values) {
        Pack pack = chaired(who, meeting, trainee);
        Typed typed = new Typed(values);
        return decisions
                .write(who, meeting, trainee, DecisionFormPages.read(typed))
                .fold(draft -> new ModelAndView("redirect:" + Links.writing(meeting, trainee) + "/review"), reasons -> {
                    ModelAndView page = form(who, pack, typed, reasons);
                    page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                    return page;
                });
    }

    @PostMapping("/drop")
    String drop(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID meeting,
            @PathVariable UUID trainee,
            RedirectAttributes redirect) {
        decisions.drop(who, meeting, trainee);
        redirect.addFlashAttribute("flash", words.say("committee.draft.dropped"));
        return "redirect:" + Links.evidence(meeting, trainee);
    }

    @GetMapping("/review")
    ModelAndView review(@AuthenticationPrincipal SignedIn who, @PathVariable UUID meeting, @PathVariable UUID trainee) {
        return review(who, decisions.preview(who, meeting, trainee), List.of());
    }

    @PostMapping("/sign")
    ModelAndView sign(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID meeting,
            @PathVariable UUID trainee,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Typed typed = new Typed(values);
        Credential credential = Credential.of(typed.text("password"), typed.text("assertion"));
        return decisions
                .sign(who, meeting, trainee, typed.text("hash"), credential)
                .fold(
                        decision -> {
                            redirect.addFlashAttribute("flash", words.say("committee.signed.done"));
                            return new ModelAndView("redirect:" + Links.decision(decision.id()));
                        },
                        reasons -> {
                            ModelAndView page = review(who, decisions.preview(who, meeting, trainee), reasons);
                            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                            return page;
                        });
    }

    private Pack chaired(SignedIn who, UUID meeting, UUID trainee) {
        if (!meetings.read(who, meeting).chairId().equals(who.personId())) {
            throw new NotFound();
        }
        return packs.read(who, meeting, trainee);
    }

    private ModelAndView form(SignedIn who, Pack pack, Typed typed, List<Refusal> reasons) {
        Ballot ballot = decisions.ballot(who, pack.meetingId(), pack.traineeId());
        Optional<DecisionDraft> draft = decisions.draft(who, pack.meetingId(), pack.traineeId());
        return new ModelAndView(
                "committee/decision-form", "page", pages.form(pack, ballot, typed, draft.isPresent(), reasons));
    }

    private ModelAndView review(SignedIn who, Preview preview, List<Refusal> reasons) {
        return new ModelAndView("committee/decision-review", "page", pages.review(who, preview, reasons));
    }
}
