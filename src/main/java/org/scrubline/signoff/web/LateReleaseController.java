package org.scrubline.signoff.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.signoff.LateReleases;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.SigningStatements;
import org.scrubline.signoff.web.VersionSignaturesView.Act;
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

/** What the director sees of signing: sheets closed by time, and records that wait for a second signature. */
@Controller
class LateReleaseController {

    private final LateReleases releases;
    private final OpenSignaturePages pages;
    private final SigningStatements statements;
    private final Passkeys passkeys;
    private final Wording wording;

    LateReleaseController(
            LateReleases releases,
            OpenSignaturePages pages,
            SigningStatements statements,
            Passkeys passkeys,
            Wording wording) {
        this.passkeys = passkeys;
        this.releases = releases;
        this.pages = pages;
        this.statements = statements;
        this.wording = wording;
    }

    @GetMapping("/open-signatures")
    String open(@AuthenticationPrincipal SignedIn who, Model model) {
        if (!who.has(Role.DIRECTOR)) {
            throw new NotFound();
        }
        model.addAttribute("closed", pages.closed(releases.closed(who)));
        model.addAttribute("awaited", pages.awaited(who));
        return "signoff/open-signatures";
    }

    @GetMapping("/late-releases/{sheetId}")
    ModelAndView sheet(@AuthenticationPrincipal SignedIn who, @PathVariable UUID sheetId) {
        return page(who, sheetId, FormView.empty());
    }

    @PostMapping("/late-releases/{sheetId}")
    ModelAndView release(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID sheetId,
            @RequestParam(defaultValue = "") String reason,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(defaultValue = "") String assertion,
            RedirectAttributes redirect) {
        return releases.release(who, sheetId, reason, Credential.of(password, assertion))
                .fold(
                        release -> {
                            redirect.addFlashAttribute("flash", wording.text("signoff.release.done"));
                            return new ModelAndView("redirect:/open-signatures");
                        },
                        reasons -> refused(who, sheetId, reason, reasons));
    }

    private ModelAndView refused(SignedIn who, UUID sheetId, String reason, List<Refusal> reasons) {
        ModelAndView page =
                page(who, sheetId, new FormView(Map.of("reason", reason), wording.errors(CredentialPlace.of(reasons))));
        boolean mayNot = reasons.stream().anyMatch(one -> one.field().equals(Signing.AUTHORITY));
        page.setStatus(mayNot ? HttpStatus.FORBIDDEN : HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private ModelAndView page(SignedIn who, UUID sheetId, FormView form) {
        ModelAndView page = new ModelAndView("signoff/late-release");
        page.addObject("sheet", pages.closed(releases.closed(who, sheetId)));
        page.addObject("accepted", statements.accepted(who.personId()));
        page.addObject("ask", passkeys.askLater(who.accountId()).orElse(null));
        page.addObject(
                "acts", List.of(new Act(RecordEvent.LATE_RELEASED.name(), wording.text("signoff.release.submit"))));
        page.addObject("form", form);
        return page;
    }
}
