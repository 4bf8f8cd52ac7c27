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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Logs a case that has ended, or plans one. */
@Controller
class CaseEntryController {

    private static final String PLAN = "plan";

    private final Cases cases;
    private final People people;
    private final CaseEntryPages pages;
    private final CaseBand band;
    private final CaseWords words;

    CaseEntryController(Cases cases, People people, CaseEntryPages pages, CaseBand band, CaseWords words) {
        this.cases = cases;
        this.people = people;
        this.pages = pages;
        this.band = band;
        this.words = words;
    }

    @GetMapping("/cases/{how:new|plan}")
    String form(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable String how,
            @RequestParam Optional<UUID> programme,
            @RequestParam Optional<UUID> secondEyeOf,
            Model model) {
        UUID own = pages.programme(
                who,
                secondEyeOf
                        .map(first -> cases.open(who, first).surgicalCase().programmeId())
                        .or(() -> programme));
        Typed typed = secondEyeOf.map(first -> pages.otherEye(who, first)).orElseGet(() -> pages.fresh(who, own));
        model.addAttribute("page", pages.page(who, own, how.equals(PLAN), typed, List.of()));
        return "casework/case-entry";
    }

    @PostMapping("/cases/{how:new|plan}")
    String send(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable String how,
            @RequestParam MultiValueMap<String, String> values,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Typed typed = new Typed(values);
        UUID programme = pages.programme(who, typed.id("programme"));
        boolean planned = how.equals(PLAN);
        if (typed.text("action").equals("band")) {
            model.addAttribute("page", pages.page(who, programme, planned, typed, List.of()));
            return "casework/case-entry";
        }
        Attempt<CaseEntry> entry = new CaseEntryInput(who, programme, typed).read(people.sites(), planned);
        return entry.<Attempt<SurgicalCase>>fold(complete -> cases.log(who, complete), Attempt::refused)
                .fold(
                        logged -> done(logged, entry.orThrow(), redirect),
                        reasons -> refused(who, programme, planned, typed, reasons, model, response));
    }

    private String done(SurgicalCase logged, CaseEntry entry, RedirectAttributes redirect) {
        boolean counted = logged.state() == CaseState.ENDED && entry.claimedPart() != Part.ASSISTED;
        String about = band.sentence(logged.band(), entry.traineeId(), logged.procedureCode(), counted ? 1 : 0);
        String key = logged.state() == CaseState.PLANNED ? "case.planned.flash" : "case.logged.flash";
        redirect.addFlashAttribute("flash", words.say(key, logged.reference(), about));
        return "redirect:/cases/" + logged.id();
    }

    private String refused(
            SignedIn who,
            UUID programme,
            boolean planned,
            Typed typed,
            List<Refusal> reasons,
            Model model,
            HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("page", pages.page(who, programme, planned, typed, reasons));
        return "casework/case-entry";
    }
}
