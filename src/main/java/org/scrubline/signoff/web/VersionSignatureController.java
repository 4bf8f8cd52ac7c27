package org.scrubline.signoff.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.VersionSigning;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Countersigning, and the trainee's answer to a signed record. */
@Controller
class VersionSignatureController {

    private final VersionSigning signing;
    private final SignedRecords records;
    private final SignedModel model;
    private final SignedLines lines;
    private final Wording wording;

    VersionSignatureController(
            VersionSigning signing, SignedRecords records, SignedModel model, SignedLines lines, Wording wording) {
        this.signing = signing;
        this.records = records;
        this.model = model;
        this.lines = lines;
        this.wording = wording;
    }

    @GetMapping("/to-countersign")
    String list(@AuthenticationPrincipal SignedIn who, Model page) {
        if (!who.has(Role.SUPERVISOR)) {
            throw new NotFound();
        }
        page.addAttribute("lines", lines.of(signing.toCountersign(who)));
        return "signoff/to-countersign";
    }

    @PostMapping("/signed/{id}/signatures")
    ModelAndView sign(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam RecordEvent event,
            @RequestParam Map<String, String> typed,
            RedirectAttributes redirect) {
        if (!VersionSigning.EVENTS.contains(event)) {
            throw new NotFound();
        }
        VersionSigning.Said said =
                new VersionSigning.Said(event, id, typed.getOrDefault("hash", ""), typed.getOrDefault("words", ""));
        return signing.sign(
                        who,
                        said,
                        Credential.of(typed.getOrDefault("password", ""), typed.getOrDefault("assertion", "")))
                .fold(
                        signature -> {
                            redirect.addFlashAttribute("flash", wording.text("signoff.version.done." + event));
                            return new ModelAndView("redirect:/signed/" + id);
                        },
                        reasons -> refused(who, id, said, reasons, redirect));
    }

    /** Somebody who lost the race to countersign may not read the record any more, but is told why. */
    private ModelAndView refused(
            SignedIn who, UUID id, VersionSigning.Said said, List<Refusal> reasons, RedirectAttributes redirect) {
        try {
            FormView form = new FormView(Map.of("words", said.words()), wording.errors(CredentialPlace.of(reasons)));
            ModelAndView page = model.page(who, records.read(who, id), form);
            boolean mayNot = reasons.stream().anyMatch(reason -> reason.field().equals(Signing.AUTHORITY));
            page.setStatus(mayNot ? HttpStatus.FORBIDDEN : HttpStatus.UNPROCESSABLE_CONTENT);
            return page;
        } catch (NotFound notTheirsAnyMore) {
            redirect.addFlashAttribute("flash", wording.text(reasons.get(0)));
            return new ModelAndView("redirect:/to-countersign");
        }
    }
}
