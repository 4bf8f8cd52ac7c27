package org.scrubline.signoff.web;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState;
import org.scrubline.platform.Credential;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.signoff.SheetContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.SigningPreview;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Review and sign. */
@Controller
@RequestMapping("/sheets/{id}")
class ReviewController {

    private static final String PAGE = "signoff/review";

    /** Fields of refusals that have a place of their own on the page; all others are among the obstacles. */
    private static final Set<String> IN_PLACE = Set.of("password", "statement");

    private final Signing signing;
    private final Sheets sheets;
    private final ReviewPages pages;
    private final ReviewExtras extras;
    private final RecordWords words;

    ReviewController(Signing signing, Sheets sheets, ReviewPages pages, ReviewExtras extras, RecordWords words) {
        this.signing = signing;
        this.sheets = sheets;
        this.pages = pages;
        this.extras = extras;
        this.words = words;
    }

    /** A line of the error summary; {@code field} is the id of the element. */
    record FieldError(String field, String message) {}

    @GetMapping("/review")
    ModelAndView review(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        SigningPreview preview = signing.preview(who, id);
        return preview.sheet().state() == SheetState.SIGNED
                ? new ModelAndView("redirect:/sheets/" + id + "/signed")
                : page(who, preview, List.of());
    }

    @PostMapping("/review/untouched")
    ModelAndView untouchedWereNotSeen(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam int version,
            RedirectAttributes redirect) {
        SheetChange change = new SheetChange.SetBlankSteps(null, new StepState.NotSeen());
        return sheets.change(who, id, version, change)
                .fold(
                        sheet -> {
                            redirect.addFlashAttribute("flash", words.say("signoff.untouched.done"));
                            return new ModelAndView("redirect:/sheets/" + id + "/review");
                        },
                        reasons -> refused(who, id, reasons));
    }

    @PostMapping("/sign")
    ModelAndView sign(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam String hash,
            @RequestParam(defaultValue = "") String reviewed,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(defaultValue = "") String assertion,
            RedirectAttributes redirect) {
        try {
            return signing.sign(who, id, hash, Credential.of(password, assertion))
                    .fold(signed -> signed(signed, redirect), reasons -> refused(who, id, reasons));
        } catch (StaleData e) {
            throw compared(who, id, hash, reviewed, e);
        }
    }

    private ModelAndView signed(SignedSheet signed, RedirectAttributes redirect) {
        String key = signed.late() ? "signoff.done.late" : "signoff.done";
        String second = signed.marks().awaitingCountersignature() ? " " + words.say("signoff.done.countersign") : "";
        redirect.addFlashAttribute("flash", words.say(key) + second);
        return new ModelAndView("redirect:/signed/" + signed.id());
    }

    /** What the page sent back counts only if it is what the hash was made from. */
    private StaleData compared(SignedIn who, UUID id, String hash, String reviewed, StaleData refused) {
        return SheetContent.read(reviewed, hash)
                .map(mine -> pages.stale(
                        refused,
                        mine,
                        SheetContent.read(signing.preview(who, id).content())))
                .orElse(refused);
    }

    private ModelAndView refused(SignedIn who, UUID id, List<Refusal> reasons) {
        SigningPreview preview = signing.preview(who, id);
        ModelAndView page = page(who, preview, reasons);
        boolean mayNot = reasons.stream().anyMatch(reason -> reason.field().equals(Signing.AUTHORITY));
        page.setStatus(mayNot ? HttpStatus.FORBIDDEN : HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private ModelAndView page(SignedIn who, SigningPreview preview, List<Refusal> reasons) {
        ModelAndView page = new ModelAndView(PAGE);
        extras.add(page, who, preview.sheet());
        page.addObject("page", pages.of(preview));
        page.addObject("ask", pages.ask(who, preview));
        page.addObject(
                "errors",
                reasons.stream()
                        .map(reason -> new FieldError(element(reason), words.say(reason)))
                        .toList());
        page.addObject(
                "passwordError",
                reasons.stream()
                        .filter(reason -> reason.field().equals("password"))
                        .map(words::say)
                        .findFirst()
                        .orElse(null));
        return page;
    }

    /** Where on the page to mend it. Without a passkey the password is what is left. */
    private static String element(Refusal reason) {
        boolean credential = reason.field().equals("password") || reason.field().equals("passkey");
        if (credential) {
            return "password";
        }
        return IN_PLACE.contains(reason.field()) ? reason.field() : "obstacles";
    }
}
