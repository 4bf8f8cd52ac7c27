package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.scrubline.casework.CaseChanges;
import org.scrubline.casework.CaseFile;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Part;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A case and the small forms about it. */
@Controller
class CaseController {

    private final Cases cases;
    private final CaseChanges changes;
    private final CasePages pages;
    private final ChangePages forms;
    private final CaseMayDo mayDo;
    private final CaseWords words;

    CaseController(
            Cases cases, CaseChanges changes, CasePages pages, ChangePages forms, CaseMayDo mayDo, CaseWords words) {
        this.mayDo = mayDo;
        this.cases = cases;
        this.changes = changes;
        this.pages = pages;
        this.forms = forms;
        this.words = words;
    }

    @GetMapping("/cases/{id}")
    String read(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        CaseFile file = cases.open(who, id);
        model.addAttribute("page", pages.page(who, file));
        model.addAttribute("mayDo", mayDo.of(who, file));
        return "casework/case";
    }

    @GetMapping("/cases/{id}/{change:goal|plan|start|end|scorers|trainees|hand-on|abandon|convert}")
    String form(
            @AuthenticationPrincipal SignedIn who, @PathVariable UUID id, @PathVariable String change, Model model) {
        CaseFile file = cases.open(who, id);
        model.addAttribute("mayDo", mayDo.of(who, file));
        model.addAttribute("page", forms.page(file, known(change), forms.fresh(who, file), List.of()));
        return "casework/case-change";
    }

    @PostMapping("/cases/{id}/{change:goal|plan|start|end|scorers|trainees|hand-on|abandon|convert}")
    String send(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @PathVariable String change,
            @RequestParam MultiValueMap<String, String> values,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        CaseFile file = cases.open(who, id);
        Typed typed = new Typed(values);
        return apply(who, file, known(change), typed)
                .fold(
                        done -> {
                            redirect.addFlashAttribute("flash", words.say("case.change." + change + ".done"));
                            return "redirect:/cases/" + id;
                        },
                        reasons -> {
                            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
                            model.addAttribute("mayDo", mayDo.of(who, file));
                            model.addAttribute("page", forms.page(file, known(change), typed, reasons));
                            return "casework/case-change";
                        });
    }

    private static CaseChange known(String path) {
        return CaseChange.at(path).orElseThrow(NotFound::new);
    }

    private Attempt<?> apply(SignedIn who, CaseFile file, CaseChange change, Typed typed) {
        UUID id = file.surgicalCase().id();
        return switch (change) {
            case GOAL -> changes.setGoal(who, id, typed.text("goal"));
            case PLAN ->
                CaseEntryInput.day(typed.text("plannedOn"))
                        .<Attempt<?>>map(day -> changes.plan(who, id, day))
                        .orElseGet(() -> missing("plannedOn"));
            case START -> changes.start(who, id);
            case END ->
                LocalEnd.read(typed.text("endedAt"), typed.text("endedOffset"), ChangePages.zone(file))
                        .<Attempt<?>>fold(end -> changes.end(who, id, end), Attempt::refused);
            case SCORERS ->
                asked(
                        typed,
                        "trainee",
                        trainee -> asked(typed, "supervisor", scorer -> changes.askScorer(who, id, trainee, scorer)));
            case TRAINEES ->
                asked(
                        typed,
                        "trainee",
                        trainee -> asked(typed, "supervisor", scorer -> addTrainee(who, id, trainee, scorer, typed)));
            case HAND_ON ->
                asked(
                        typed,
                        "sheet",
                        sheet -> asked(
                                typed, "supervisor", to -> changes.handOn(who, id, sheet, to, typed.text("reason"))));
            case ABANDON -> changes.abandon(who, id, typed.text("abandonedReason"));
            case CONVERT -> changes.convert(who, id, typed.text("convertedTo"));
        };
    }

    private Attempt<?> addTrainee(SignedIn who, UUID id, UUID trainee, UUID scorer, Typed typed) {
        Optional<Part> part = typed.one("claimedPart", Part.class);
        return part.isPresent() ? changes.addTrainee(who, id, trainee, part.get(), scorer) : missing("claimedPart");
    }

    private static Attempt<?> asked(Typed typed, String field, Function<UUID, Attempt<?>> then) {
        return typed.id(field).<Attempt<?>>map(then).orElseGet(() -> missing(field));
    }

    private static Attempt<?> missing(String field) {
        return Attempt.refused(Refusal.at(field, "refusal.case.missing." + field));
    }
}
