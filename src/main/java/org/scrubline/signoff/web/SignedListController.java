package org.scrubline.signoff.web;

import org.scrubline.platform.ListPage;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedRecords;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** What a supervisor signed, and what was signed about a trainee. */
@Controller
class SignedListController {

    private final SignedRecords records;
    private final SignedLines lines;

    SignedListController(SignedRecords records, SignedLines lines) {
        this.records = records;
        this.lines = lines;
    }

    /** Their own list for a supervisor; somebody who is only a trainee is led to theirs. */
    @GetMapping("/signed")
    String signed(@AuthenticationPrincipal SignedIn who, @RequestParam(defaultValue = "1") int page, Model model) {
        if (!who.has(Role.SUPERVISOR)) {
            return "redirect:/feedback";
        }
        model.addAttribute(
                "page",
                ListPage.of(records.signedBy(who.personId()), page, "/signed").map(lines::of));
        model.addAttribute("voids", lines.of(records.voidSignedBy(who.personId())));
        return "signoff/signed-list";
    }

    @GetMapping("/feedback")
    String feedback(@AuthenticationPrincipal SignedIn who, @RequestParam(defaultValue = "1") int page, Model model) {
        if (!who.has(Role.TRAINEE)) {
            throw new NotFound();
        }
        model.addAttribute(
                "page",
                ListPage.of(records.about(who.personId()), page, "/feedback").map(lines::about));
        model.addAttribute("voids", lines.about(records.voidAbout(who.personId())));
        return "signoff/feedback-list";
    }
}
