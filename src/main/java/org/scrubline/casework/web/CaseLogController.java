package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.ResponseBody;

/** What a trainee's device keeps to log cases without a network. */
@Controller
class CaseLogController {

    private final CaseLogPages pages;
    private final Rubrics rubrics;

    CaseLogController(CaseLogPages pages, Rubrics rubrics) {
        this.pages = pages;
        this.rubrics = rubrics;
    }

    @GetMapping("/at-the-table/case-log")
    @ResponseBody
    CaseLogPackage list(@AuthenticationPrincipal SignedIn who) {
        return pages.of(who);
    }

    @GetMapping("/at-the-table/case-log/{programme}")
    String form(@AuthenticationPrincipal SignedIn who, @PathVariable UUID programme, Model model) {
        model.addAttribute("page", pages.form(who, programme));
        return "casework/case-log";
    }

    /** The steps of a procedure, none with a level. */
    @GetMapping("/at-the-table/case-steps/{procedure}")
    String steps(@AuthenticationPrincipal SignedIn who, @PathVariable String procedure, Model model) {
        if (!who.has(Role.TRAINEE)) {
            throw new NotFound();
        }
        SelfScorePage page = SelfScorePage.of(
                "", "", false, List.of(), rubrics.current(procedure).rubric(), Map.of());
        model.addAttribute("phases", page.phases());
        model.addAttribute("procedure", procedure);
        return "casework/case-steps";
    }
}
