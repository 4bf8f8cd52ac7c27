package org.scrubline.outcome.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.Entering;
import org.scrubline.outcome.OutcomeEntry;
import org.scrubline.outcome.OutcomeFile;
import org.scrubline.outcome.Outcomes;
import org.scrubline.outcome.Visit;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Audited;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The outcome of one case: what is known, and the forms to enter more. */
@Controller
@RequestMapping("/outcomes/{id}")
class CaseOutcomeController {

    private final Outcomes outcomes;
    private final CaseOutcomePages pages;
    private final Wording wording;
    private final ApplicationEventPublisher events;

    CaseOutcomeController(
            Outcomes outcomes, CaseOutcomePages pages, Wording wording, ApplicationEventPublisher events) {
        this.outcomes = outcomes;
        this.pages = pages;
        this.wording = wording;
        this.events = events;
    }

    /** With the number of a visit, the form starts with what it says. */
    @GetMapping
    String read(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam @Nullable Integer replaces,
            Model model) {
        OutcomeFile file = outcomes.read(who, id);
        seen(who, file);
        VisitForm form = replaces == null ? VisitForm.empty() : VisitForm.of(visit(file, replaces));
        model.addAttribute("page", pages.page(who, file, form, List.of()));
        return "outcome/case";
    }

    private static OutcomeEntry visit(OutcomeFile file, int ordinal) {
        return file.outcome().standing().stream()
                .filter(entry -> entry.ordinal() == ordinal && entry.content() instanceof Visit)
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    /** Told to each trainee of the case whose record somebody else opened. */
    private void seen(SignedIn who, OutcomeFile file) {
        Audited.Item item = new Audited.Item(
                "outcome", file.surgicalCase().id(), null, file.surgicalCase().reference());
        if (!file.trainees().contains(who.personId())) {
            file.trainees()
                    .forEach(trainee -> events.publishEvent(
                            new RecordSeen(who, trainee, file.surgicalCase().programmeId(), item, null)));
        }
    }

    @PostMapping("/{form:baseline|visit|no-visit|mistake}")
    String enter(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @PathVariable String form,
            @RequestParam MultiValueMap<String, String> values,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        VisitForm typed = new VisitForm(values);
        OutcomeFile file = outcomes.read(who, id);
        return read(form, typed)
                .<Attempt<OutcomeEntry>>fold(entering -> outcomes.enter(who, id, entering), Attempt::refused)
                .fold(
                        entry -> {
                            redirect.addFlashAttribute("flash", wording.text("outcome.entered." + form));
                            return "redirect:/outcomes/" + id;
                        },
                        reasons -> {
                            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
                            model.addAttribute("page", pages.page(who, file, typed, onForm(form, reasons)));
                            return "outcome/case";
                        });
    }

    private static Attempt<Entering> read(String form, VisitForm typed) {
        return switch (form) {
            case "baseline" -> typed.baseline();
            case "visit" -> typed.visit();
            case "no-visit" -> typed.noVisit();
            default -> Attempt.done(typed.mistake());
        };
    }

    /** The rules name fields as the content does; each form has a beginning of its own for them. */
    private static List<Refusal> onForm(String form, List<Refusal> reasons) {
        String beginning =
                form.equals("baseline") ? VisitForm.BASELINE : form.equals("no-visit") ? VisitForm.NO_VISIT : "";
        return reasons.stream()
                .map(reason -> new Refusal(field(beginning, reason.field()), reason.messageKey(), reason.arguments()))
                .toList();
    }

    private static String field(String beginning, String field) {
        return beginning.isEmpty() || field.isEmpty() || field.startsWith(beginning)
                ? field
                : beginning + Character.toUpperCase(field.charAt(0)) + field.substring(1);
    }
}
