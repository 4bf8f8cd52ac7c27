package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.CaseState;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Part;
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
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Logs a case that has ended, or plans one. */
@Controller
class CaseEntryController {

    private static final String PAGE = "casework/case-entry";

    private final Cases cases;
    private final People people;
    private final CaseEntryPages pages;
    private final CaseBand band;
    private final CaseMayDo mayDo;
    private final CaseWords words;

    CaseEntryController(
            Cases cases, People people, CaseEntryPages pages, CaseBand band, CaseMayDo mayDo, CaseWords words) {
        this.mayDo = mayDo;
        this.cases = cases;
        this.people = people;
        this.pages = pages;
        this.band = band;
        this.words = words;
    }

    @GetMapping("/cases/new")
    String logForm(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Optional<UUID> programme,
            @RequestParam Optional<UUID> secondEyeOf,
            Model model) {
        return secondEyeOf.isPresent()
                ? otherEyeForm(who, secondEyeOf.get(), model)
                : freshForm(who, programme, false, model);
    }

    @GetMapping("/cases/plan")
    String planForm(@AuthenticationPrincipal SignedIn who, @RequestParam Optional<UUID> programme, Model model) {
        return freshForm(who, programme, true, model);
    }

    private String freshForm(SignedIn who, Optional<UUID> named, boolean planned, Model model) {
        UUID programme = pages.programme(who, named);
        show(who, programme, planned, pages.fresh(who, programme), List.of(), model);
        return PAGE;
    }

    private String otherEyeForm(SignedIn who, UUID first, Model model) {
        UUID programme = pages.programme(
                who, Optional.of(cases.open(who, first).surgicalCase().programmeId()));
        show(who, programme, false, pages.otherEye(who, first), List.of(), model);
        return PAGE;
    }

    @PostMapping("/cases/new")
    String log(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam MultiValueMap<String, String> values,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return send(who, new Typed(values), false, model, response, redirect);
    }

    @PostMapping("/cases/plan")
    String plan(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam MultiValueMap<String, String> values,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return send(who, new Typed(values), true, model, response, redirect);
    }

    private String send(
            SignedIn who,
            Typed typed,
            boolean planned,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        UUID programme = pages.programme(who, typed.id("programme"));
        if (typed.text("action").equals("band")) {
            show(who, programme, planned, typed, List.of(), model);
            return PAGE;
        }
        CaseEntryInput input = new CaseEntryInput(who, programme, typed, people.sites(), planned);
        Optional<CaseEntry> entry = input.complete();
        Attempt<SurgicalCase> attempt = entry.map(complete -> cases.log(who, complete))
                .orElseGet(() -> Attempt.refused(input.reasons(cases.against(who, input.answers()))));
        return attempt.fold(logged -> done(logged, entry.orElseThrow(), redirect), reasons -> {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            show(who, programme, planned, typed, reasons, model);
            return PAGE;
        });
    }

    private void show(SignedIn who, UUID programme, boolean planned, Typed typed, List<Refusal> reasons, Model model) {
        model.addAttribute("mayDo", mayDo.of(who, programme, typed).orElse(null));
        model.addAttribute("page", pages.page(who, programme, planned, typed, reasons));
    }

    private String done(SurgicalCase logged, CaseEntry entry, RedirectAttributes redirect) {
        boolean counted = logged.state() == CaseState.ENDED && entry.claimedPart() != Part.ASSISTED;
        String about = band.sentence(logged.band(), entry.traineeId(), logged.procedureCode(), counted ? 1 : 0);
        String key = logged.state() == CaseState.PLANNED ? "case.planned.flash" : "case.logged.flash";
        redirect.addFlashAttribute("flash", words.say(key, logged.reference(), about));
        return "redirect:/cases/" + logged.id();
    }
}
