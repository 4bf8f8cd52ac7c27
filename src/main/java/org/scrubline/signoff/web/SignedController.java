package org.scrubline.signoff.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
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
    private final SignedModel model;
    private final Readings readings;
    private final Wording wording;

    SignedController(SignedRecords records, SignedModel model, Readings readings, Wording wording) {
        this.records = records;
        this.model = model;
        this.readings = readings;
        this.wording = wording;
    }

    @GetMapping("/signed/{id}")
    ModelAndView read(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        SignedSheet signed = records.read(who, id);
        readings.seen(who, signed);
        return model.page(who, signed, FormView.empty());
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
                            redirect.addFlashAttribute("flash", wording.text("signoff.remark.done"));
                            return new ModelAndView("redirect:/signed/" + id);
                        },
                        reasons -> refused(who, id, body, reasons));
    }

    private ModelAndView refused(SignedIn who, UUID id, String body, List<Refusal> reasons) {
        FormView form = new FormView(Map.of("body", body), wording.errors(reasons));
        ModelAndView page = model.page(who, records.read(who, id), form);
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }
}
