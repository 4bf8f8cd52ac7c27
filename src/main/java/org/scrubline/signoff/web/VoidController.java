package org.scrubline.signoff.web;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.RecordHistory;
import org.scrubline.signoff.Statement;
import org.scrubline.signoff.Versions;
import org.scrubline.signoff.VoidFile;
import org.scrubline.signoff.VoidGround;
import org.scrubline.signoff.Voids;
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

/** Asks for a record to be void, and decides on that. */
@Controller
@RequestMapping("/signed/{id}")
class VoidController {

    private final Versions versions;
    private final Voids voids;
    private final StatementForms forms;
    private final StatementAnswers answers;
    private final VersionsPages pages;
    private final RecordWords words;

    VoidController(
            Versions versions,
            Voids voids,
            StatementForms forms,
            StatementAnswers answers,
            VersionsPages pages,
            RecordWords words) {
        this.versions = versions;
        this.voids = voids;
        this.forms = forms;
        this.answers = answers;
        this.pages = pages;
        this.words = words;
    }

    @GetMapping("/void")
    ModelAndView ask(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        RecordHistory history = versions.history(who, id);
        return history.may().contains(RecordEvent.VOID_ASKED)
                ? answers.page(who, forms.askVoid(about(history, "void", TypedStatement.none(), List.of())))
                : new ModelAndView("redirect:/signed/" + id);
    }

    @PostMapping("/void")
    ModelAndView ask(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        Attempt<Statement> attempt = ground(typed)
                .map(ground -> voids.ask(who, id, ground, typed.signature()))
                .orElseGet(() -> Attempt.refused(Refusal.at("ground", "signoff.refusal.ground")));
        return answers.answer(
                who,
                attempt,
                redirect,
                asked -> "/signed/" + id,
                "signoff.void.asked",
                reasons -> forms.askVoid(about(versions.history(who, id), "void", typed, reasons)));
    }

    @GetMapping("/void/decision")
    ModelAndView decide(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        RecordHistory history = versions.history(who, id);
        return history.may().contains(RecordEvent.VOID_CONFIRMED)
                ? answers.page(who, decision(history, TypedStatement.none(), List.of()))
                : new ModelAndView("redirect:/signed/" + id);
    }

    @PostMapping("/void/decision")
    ModelAndView decide(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        TypedStatement typed = new TypedStatement(form);
        boolean confirm = typed.text("act").equals(RecordEvent.VOID_CONFIRMED.name());
        return answers.answer(
                who,
                decided(typed).orElseGet(() -> voids.decide(who, id, confirm, typed.signature())),
                redirect,
                done -> "/signed/" + id,
                confirm ? "signoff.void.confirmed" : "signoff.void.declined",
                reasons -> decision(versions.history(who, id), typed, reasons));
    }

    /** With who asked and why in view. */
    private StatementForm decision(RecordHistory history, TypedStatement typed, List<Refusal> reasons) {
        return forms.decideVoid(about(history, "void/decision", typed, reasons))
                .quoting(history.voidWaiting().map(pages::waiting).orElse(null))
                .answering(history.voidWaiting().map(VoidFile::request).orElse(null));
    }

    /** Neither button is no decision. */
    private static Optional<Attempt<Statement>> decided(TypedStatement typed) {
        boolean known = Stream.of(RecordEvent.VOID_CONFIRMED, RecordEvent.VOID_DECLINED)
                .anyMatch(event -> event.name().equals(typed.text("act")));
        return known ? Optional.empty() : Optional.of(Attempt.refused(Refusal.of("signoff.refusal.act")));
    }

    private static Optional<VoidGround> ground(TypedStatement typed) {
        return Stream.of(VoidGround.values())
                .filter(ground -> ground.name().equals(typed.text("ground")))
                .findFirst();
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
