package org.scrubline.signoff.web;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.ContestFile;
import org.scrubline.signoff.Contests;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.Statement;
import org.scrubline.signoff.Voids;
import org.scrubline.signoff.web.StatementForm.Back;
import org.scrubline.signoff.web.StatementForms.Ask;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Contests: the list of each side, one contest, and what its parties say in it. */
@Controller
class ContestController {

    private final Contests contests;
    private final Voids voids;
    private final SignedRecords records;
    private final ContestPages pages;
    private final StatementForms forms;
    private final StatementAnswers answers;
    private final RecordWords words;

    ContestController(
            Contests contests,
            Voids voids,
            SignedRecords records,
            ContestPages pages,
            StatementForms forms,
            StatementAnswers answers,
            RecordWords words) {
        this.contests = contests;
        this.voids = voids;
        this.records = records;
        this.pages = pages;
        this.forms = forms;
        this.answers = answers;
        this.words = words;
    }

    @GetMapping("/contests")
    ModelAndView list(@AuthenticationPrincipal SignedIn who) {
        return new ModelAndView("signoff/contest-list", "page", pages.list(who, contests.of(who), voids.waiting(who)));
    }

    @GetMapping("/contests/{id}")
    ModelAndView read(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        return new ModelAndView("signoff/contest", "page", pages.of(who, contests.read(who, id)));
    }

    /** The form for what this person may say now; whoever has nothing to say reads the contest. */
    @GetMapping("/contests/{id}/{act:reply|reviewer|decision|end}")
    ModelAndView ask(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, @PathVariable String act) {
        ContestFile contest = contests.read(who, id);
        boolean may =
                contests.next(who, contest).stream().map(ContestPages::path).anyMatch(act::equals);
        return may
                ? answers.page(who, form(who, contest, act, TypedStatement.none(), List.of()))
                : new ModelAndView("redirect:/contests/" + id);
    }

    @PostMapping("/contests/{id}/reply")
    ModelAndView reply(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        return said(who, id, "reply", typed, redirect, contests.reply(who, id, typed.signature()));
    }

    @PostMapping("/contests/{id}/reviewer")
    ModelAndView nameReviewer(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        Attempt<Statement> attempt = typed.id("reviewer")
                .map(reviewer -> contests.nameReviewer(who, id, reviewer, typed.signature()))
                .orElseGet(() -> Attempt.refused(Refusal.at("reviewer", "signoff.refusal.reviewer-choice")));
        return said(who, id, "reviewer", typed, redirect, attempt);
    }

    @PostMapping("/contests/{id}/decision")
    ModelAndView decide(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        Attempt<Statement> attempt = Stream.of(RecordEvent.CONTEST_UPHELD, RecordEvent.CONTEST_NOT_UPHELD)
                .filter(event -> event.name().equals(typed.text("act")))
                .findFirst()
                .map(event -> contests.decide(who, id, event == RecordEvent.CONTEST_UPHELD, typed.signature()))
                .orElseGet(() -> Attempt.refused(Refusal.of("signoff.refusal.act")));
        return said(who, id, "decision", typed, redirect, attempt);
    }

    @PostMapping("/contests/{id}/end")
    ModelAndView withdraw(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        return said(who, id, "end", typed, redirect, contests.withdraw(who, id, typed.signature()));
    }

    private ModelAndView said(
            SignedIn who,
            UUID id,
            String act,
            TypedStatement typed,
            RedirectAttributes redirect,
            Attempt<Statement> attempt) {
        return answers.answer(
                who,
                attempt,
                redirect,
                done -> "/contests/" + id,
                "signoff.contest.said",
                reasons -> form(who, contests.read(who, id), act, typed, reasons));
    }

    private StatementForm form(
            SignedIn who, ContestFile contest, String act, TypedStatement typed, List<Refusal> reasons) {
        String href = "/contests/" + contest.id();
        Ask ask = new Ask(
                records.read(who, contest.recordId()),
                href + "/" + act,
                new Back(href, words.say("signoff.back.contest")),
                typed,
                reasons);
        StatementForm form = switch (act) {
            case "reply" -> forms.reply(ask);
            case "reviewer" -> forms.reviewer(ask, contests.reviewers(who, contest.id()));
            case "decision" -> forms.decision(ask);
            default -> forms.end(ask);
        };
        return form.answering(contest.opened());
    }
}
