package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.Serializable;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.CaseFile;
import org.scrubline.casework.Cases;
import org.scrubline.casework.HandOffs;
import org.scrubline.people.People;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.QrCode;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The trainee shows a code; the supervisor enters it on a device of their own. */
@Controller
class HandOffController {

    private static final String ENTER = "casework/hand-off";

    private final Cases cases;
    private final HandOffs handOffs;
    private final People people;
    private final CasePages pages;
    private final Wording wording;
    private final String origin;

    HandOffController(
            Cases cases,
            HandOffs handOffs,
            People people,
            CasePages pages,
            Wording wording,
            @Value("${scrubline.web.origin}") String origin) {
        this.cases = cases;
        this.handOffs = handOffs;
        this.people = people;
        this.pages = pages;
        this.wording = wording;
        this.origin = origin;
    }

    /** A code as its page shows it once; {@code until} is a time of day. */
    record Shown(String code, String until, QrCode picture) implements Serializable {}

    /** A sheet that can be handed over. */
    record Line(String sheet, String scorer) {}

    /** Whether this person is the trainee of a sheet nothing was said on yet. */
    static boolean mayOffer(SignedIn who, CaseFile file) {
        return !lines(who, file).isEmpty();
    }

    private static List<Line> lines(SignedIn who, CaseFile file) {
        return file.requests().stream()
                .filter(CaseFile.ScoreRequest::untouched)
                .filter(request -> request.trainee().id().equals(who.personId()))
                .map(request ->
                        new Line(request.sheetId().toString(), request.scorer().name()))
                .toList();
    }

    @GetMapping("/cases/{id}/hand-off")
    String offerForm(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        CaseFile file = own(who, id);
        model.addAttribute("caseHref", "/cases/" + id);
        model.addAttribute("caseTitle", pages.title(file.surgicalCase()));
        model.addAttribute("lines", lines(who, file));
        return "casework/hand-off-offer";
    }

    @PostMapping("/cases/{id}/hand-off")
    String offer(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam UUID sheet,
            RedirectAttributes redirect) {
        CaseFile file = own(who, id);
        handOffs.offer(who, sheet)
                .fold(
                        offer -> redirect.addFlashAttribute("shown", shown(file, offer)),
                        reasons -> redirect.addFlashAttribute("flash", wording.text(reasons.get(0))));
        return "redirect:/cases/" + id + "/hand-off";
    }

    private CaseFile own(SignedIn who, UUID id) {
        CaseFile file = cases.open(who, id);
        if (!file.hasTrainee(who.personId())) {
            throw new NotFound();
        }
        return file;
    }

    private Shown shown(CaseFile file, HandOffs.Offer offer) {
        String until = DateTimeFormatter.ofPattern("HH:mm", LocaleContextHolder.getLocale())
                .format(offer.expiresAt()
                        .atZone(people.programme(file.surgicalCase().programmeId())
                                .zone()));
        return new Shown(offer.code(), until, QrCode.of(origin + "/hand-off?code=" + offer.code()));
    }

    @GetMapping("/hand-off")
    String enter(@AuthenticationPrincipal SignedIn who, @RequestParam(defaultValue = "") String code, Model model) {
        supervisor(who);
        return page(code, List.of(), model);
    }

    @PostMapping("/hand-off")
    String take(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String code,
            @RequestParam(defaultValue = "false") boolean instead,
            Model model,
            HttpServletResponse response) {
        return handOffs.take(supervisor(who), code, instead).fold(sheet -> "redirect:/sheets/" + sheet, reasons -> {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(code, reasons, model);
        });
    }

    private static SignedIn supervisor(SignedIn who) {
        if (!who.has(Role.SUPERVISOR)) {
            throw new NotFound();
        }
        return who;
    }

    private String page(String code, List<Refusal> reasons, Model model) {
        model.addAttribute("form", new FormView(Map.of("code", code), wording.errors(reasons)));
        model.addAttribute(
                "instead", reasons.stream().anyMatch(reason -> reason.field().equals("instead")));
        return ENTER;
    }
}
