package org.scrubline.signoff.web;

import java.util.List;
import java.util.UUID;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.RecordHistory;
import org.scrubline.signoff.Statement;
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

/** Opens, drops and compares versions of a signed record, and names who writes them when the scorer has left. */
@Controller
@RequestMapping("/signed/{id}")
class VersionController {

    private final Versions versions;
    private final StatementForms forms;
    private final StatementAnswers answers;
    private final ComparePages compare;
    private final RecordWords words;

    VersionController(
            Versions versions,
            StatementForms forms,
            StatementAnswers answers,
            ComparePages compare,
            RecordWords words) {
        this.versions = versions;
        this.forms = forms;
        this.answers = answers;
        this.compare = compare;
        this.words = words;
    }

    @GetMapping("/compare/{other}")
    ModelAndView compare(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, @PathVariable UUID other) {
        return new ModelAndView("signoff/compare", "page", compare.of(versions.history(who, id), id, other));
    }

    @GetMapping("/new-version")
    ModelAndView ask(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String reason) {
        RecordHistory history = versions.history(who, id);
        if (!history.may().contains(RecordEvent.VERSION_OPENED)) {
            return new ModelAndView("redirect:/signed/" + id);
        }
        return answers.page(
                who, forms.newVersion(about(history, "new-version", TypedStatement.reason(reason), List.of())));
    }

    @PostMapping("/new-version")
    ModelAndView open(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        return answers.answer(
                who,
                versions.open(who, id, typed.text("reason")),
                redirect,
                sheet -> "/sheets/" + sheet,
                "signoff.new-version.done",
                reasons -> forms.newVersion(about(versions.history(who, id), "new-version", typed, reasons)));
    }

    @PostMapping("/new-version/drop")
    String drop(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        versions.drop(who, id);
        redirect.addFlashAttribute("flash", words.say("signoff.new-version.dropped"));
        return "redirect:/signed/" + id;
    }

    @GetMapping("/delegate")
    ModelAndView delegates(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        List<Person> people = versions.delegates(who, id);
        if (people.isEmpty()) {
            throw new NotFound();
        }
        return answers.page(
                who,
                forms.delegate(about(versions.history(who, id), "delegate", TypedStatement.none(), List.of()), people));
    }

    @PostMapping("/delegate")
    ModelAndView nameDelegate(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        Attempt<Statement> attempt = typed.id("delegate")
                .map(delegate -> versions.nameDelegate(who, id, delegate, typed.signature()))
                .orElseGet(() -> Attempt.refused(Refusal.at("delegate", "signoff.refusal.delegate")));
        return answers.answer(
                who,
                attempt,
                redirect,
                named -> "/signed/" + id,
                "signoff.delegate.done",
                reasons -> forms.delegate(
                        about(versions.history(who, id), "delegate", typed, reasons), versions.delegates(who, id)));
    }

    private Ask about(RecordHistory history, String path, TypedStatement typed, List<Refusal> reasons) {
        String record = "/signed/" + history.newest().id();
        return new Ask(
                history.newest(),
                record + "/" + path,
                new Back(record, words.say("signoff.back.record")),
                typed,
                reasons);
    }
}
