package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.CaseAside;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.CaseReceipt.Aside;
import org.scrubline.casework.Cases;
import org.scrubline.casework.DeviceCases;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
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
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A case from a device that could not simply be entered: its trainee puts it right and logs it, or puts it away. */
@Controller
@RequestMapping("/cases/aside/{id}")
class CaseAsideController {

    private final DeviceCases intake;
    private final Cases cases;
    private final People people;
    private final CaseEntryPages pages;
    private final CaseWords words;

    CaseAsideController(DeviceCases intake, Cases cases, People people, CaseEntryPages pages, CaseWords words) {
        this.intake = intake;
        this.cases = cases;
        this.people = people;
        this.pages = pages;
        this.words = words;
    }

    @GetMapping
    String form(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        CaseAside aside = intake.aside(who, id);
        return show(who, aside, CaseBody.stored(aside.content()), List.of(), model);
    }

    @PostMapping
    String log(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> values,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        CaseAside aside = intake.aside(who, id);
        Typed typed = new Typed(values);
        CaseEntryInput input = new CaseEntryInput(who, aside.programmeId(), typed, people.sites(), false);
        Optional<CaseEntry> entry = input.complete();
        Attempt<SurgicalCase> attempt = entry.map(complete ->
                        intake.enterAside(who, id, complete, CaseBody.levels(CaseBody.stored(aside.content()))))
                .orElseGet(() -> Attempt.refused(input.reasons(cases.against(who, input.answers()))));
        return attempt.fold(
                logged -> {
                    redirect.addFlashAttribute("flash", words.say("case.aside.logged", logged.reference()));
                    return "redirect:/cases/" + logged.id();
                },
                reasons -> {
                    response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
                    return show(who, aside, typed, input.reasons(reasons), model);
                });
    }

    @PostMapping("/put-away")
    String putAway(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        intake.putAway(who, id);
        redirect.addFlashAttribute("flash", words.say("case.aside.gone"));
        return "redirect:/my-cases";
    }

    private String show(SignedIn who, CaseAside aside, Typed typed, List<Refusal> reasons, Model model) {
        model.addAttribute("why", why(aside));
        model.addAttribute("page", pages.aside(who, aside, typed, reasons));
        return "casework/case-aside";
    }

    private String why(CaseAside aside) {
        String came = words.when(
                aside.receivedAt(), people.programme(aside.programmeId()).zone());
        if (aside.why() == Aside.END_AHEAD) {
            return words.say("case.aside.why.END_AHEAD", came);
        }
        return aside.enteredAs() == null
                ? words.say("case.aside.why.OTHER_WAITS", came)
                : words.say("case.aside.why.OTHER_CONTENT", aside.enteredAs(), came);
    }
}
