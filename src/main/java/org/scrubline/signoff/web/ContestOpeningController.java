package org.scrubline.signoff.web;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Contests;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.RecordHistory;
import org.scrubline.signoff.Versions;
import org.scrubline.signoff.web.StatementForm.Back;
import org.scrubline.signoff.web.StatementForms.Ask;
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

/** The trainee contests a score. */
@Controller
@RequestMapping("/signed/{id}/contest")
class ContestOpeningController {

    private final Versions versions;
    private final Contests contests;
    private final StatementForms forms;
    private final StatementAnswers answers;
    private final RecordWords words;

    ContestOpeningController(
            Versions versions, Contests contests, StatementForms forms, StatementAnswers answers, RecordWords words) {
        this.versions = versions;
        this.contests = contests;
        this.forms = forms;
        this.answers = answers;
        this.words = words;
    }

    @GetMapping
    ModelAndView ask(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        RecordHistory history = versions.history(who, id);
        if (!history.newest().traineeId().equals(who.personId())) {
            throw new NotFound();
        }
        return history.may().contains(RecordEvent.CONTEST_OPENED)
                ? answers.page(who, forms.contest(about(history, TypedStatement.none(), List.of())))
                : new ModelAndView("redirect:/signed/" + id);
    }

    @PostMapping
    ModelAndView open(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        return answers.answer(
                who,
                contests.open(who, id, typed.all("steps"), typed.signature()),
                redirect,
                opened -> "/contests/" + opened.id(),
                "signoff.contest.opened",
                reasons -> forms.contest(about(versions.history(who, id), typed, reasons)));
    }

    private Ask about(RecordHistory history, TypedStatement typed, List<Refusal> reasons) {
        String record = "/signed/" + history.newest().id();
        return new Ask(
                history.newest(),
                record + "/contest",
                new Back(record, words.say("signoff.back.record")),
                typed,
                reasons);
    }
}
