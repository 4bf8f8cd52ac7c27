package org.scrubline.casework.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.Sheets;
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
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The score sheet as one form that is saved as a whole. */
@Controller
@RequestMapping("/sheets/{id}")
class SheetController {

    private static final String PAGE = "casework/sheet";

    private final Drafts drafts;
    private final Sheets sheets;
    private final SheetPages pages;
    private final SheetHelpers helpers;
    private final SheetWords words;

    SheetController(Drafts drafts, Sheets sheets, SheetPages pages, SheetHelpers helpers, SheetWords words) {
        this.drafts = drafts;
        this.sheets = sheets;
        this.pages = pages;
        this.helpers = helpers;
        this.words = words;
    }

    /** A line of the error summary; {@code field} is the id of the element. */
    record FieldError(String field, String message) {}

    @GetMapping
    String show(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        Draft draft = drafts.open(who, id);
        model.addAttribute("page", pages.of(draft, draft.stored(), Map.of()));
        model.addAttribute("help", helpers.of(who, draft));
        model.addAttribute("errors", List.of());
        return PAGE;
    }

    /** The same page without a name on it, for a device to keep. */
    @GetMapping("/table")
    String table(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        Draft draft = words.nameless(drafts.open(who, id));
        model.addAttribute("page", pages.of(draft, draft.stored(), Map.of()));
        model.addAttribute("help", helpers.forDevice(draft));
        model.addAttribute("errors", List.of());
        return PAGE;
    }

    @PostMapping
    ModelAndView save(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam int version,
            @RequestParam MultiValueMap<String, String> form,
            RedirectAttributes redirect) {
        Draft draft = drafts.open(who, id);
        SheetInput sent = SheetInput.of(form);
        SheetReading reading = draft.read(sent, UUID.randomUUID());
        if (!reading.refusals().isEmpty()) {
            List<Refusal> reasons = new ArrayList<>(reading.refusals());
            reasons.addAll(sheets.against(who, id, reading.change()));
            return refused(who, draft, sent, reasons);
        }
        Attempt<Sheet> attempt =
                reading.nothing() ? Attempt.done(draft.sheet()) : sheets.change(who, id, version, reading.change());
        return attempt.fold(sheet -> saved(sent, id, reading, redirect), reasons -> refused(who, draft, sent, reasons));
    }

    private ModelAndView saved(SheetInput sent, UUID id, SheetReading reading, RedirectAttributes redirect) {
        redirect.addFlashAttribute("warnings", words.identityWarnings(reading.texts()));
        if (sent.text("next").equals("review")) {
            return new ModelAndView("redirect:/sheets/" + id + "/review");
        }
        redirect.addFlashAttribute("flash", words.say("sheet.saved"));
        return new ModelAndView("redirect:/sheets/" + id);
    }

    private ModelAndView refused(SignedIn who, Draft draft, SheetInput sent, List<Refusal> reasons) {
        Map<String, String> errors = new LinkedHashMap<>();
        reasons.forEach(reason -> errors.putIfAbsent(reason.field(), words.say(reason)));
        ModelAndView page = new ModelAndView(PAGE);
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("help", helpers.of(who, draft));
        page.addObject("page", pages.of(draft, sent.over(draft.stored()), errors));
        page.addObject(
                "errors",
                reasons.stream()
                        .map(reason -> new FieldError(place(reason.field()), words.say(reason)))
                        .toList());
        return page;
    }

    /** The element on the page that stands for a field. */
    private static String place(String field) {
        if (field.isEmpty() || field.equals("rest")) {
            return "sheet";
        }
        return field.startsWith("event.") ? "events" : field.replace('.', '-');
    }
}
