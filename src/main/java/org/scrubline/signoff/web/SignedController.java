package org.scrubline.signoff.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Versions;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Signed records and the trainee's remarks under them. */
@Controller
class SignedController {

    private final SignedRecords records;
    private final SignedPages pages;
    private final Versions versions;
    private final VersionsPages versionsPages;
    private final RecordWords words;
    private final Readings readings;

    SignedController(
            SignedRecords records,
            SignedPages pages,
            Versions versions,
            VersionsPages versionsPages,
            Readings readings,
            RecordWords words) {
        this.records = records;
        this.pages = pages;
        this.versions = versions;
        this.versionsPages = versionsPages;
        this.words = words;
        this.readings = readings;
    }

    /** A line of the error summary; {@code field} is the id of the element. */
    record FieldError(String field, String message) {}

    @GetMapping("/signed/{id}")
    ModelAndView read(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        SignedSheet signed = records.read(who, id);
        readings.seen(who, signed);
        return page(who, signed, List.of(), null);
    }

    @GetMapping("/sheets/{sheetId}/signed")
    String ofSheet(@AuthenticationPrincipal SignedIn who, @PathVariable UUID sheetId) {
        return "redirect:/signed/" + records.readSheet(who, sheetId).id();
    }

    @PostMapping("/signed/{id}/remarks")
    ModelAndView remark(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String body,
            RedirectAttributes redirect) {
        return records.remark(who, id, body)
                .fold(
                        remark -> {
                            redirect.addFlashAttribute("flash", words.say("signoff.remark.done"));
                            return new ModelAndView("redirect:/signed/" + id);
                        },
                        reasons -> refused(who, id, body, reasons));
    }

    private ModelAndView refused(SignedIn who, UUID id, String body, List<Refusal> reasons) {
        List<FieldError> errors = reasons.stream()
                .map(reason -> new FieldError(reason.field(), words.say(reason)))
                .toList();
        ModelAndView page = page(who, records.read(who, id), errors, body);
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private ModelAndView page(SignedIn who, SignedSheet signed, List<FieldError> errors, @Nullable String body) {
        ModelAndView page = new ModelAndView("signoff/signed");
        page.addObject("page", pages.of(who, signed));
        page.addObject("versions", versionsPages.of(who, versions.history(who, signed.id()), signed));
        page.addObject("errors", errors);
        page.addObject("body", body);
        page.addObject("bodyError", errors.isEmpty() ? null : errors.get(0).message());
        return page;
    }
}
