package org.scrubline.cohort.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.Cohort;
import org.scrubline.platform.SignedIn;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The director's page. */
@Controller
class CohortController {

    private final Cohort cohort;
    private final CohortPages pages;

    CohortController(Cohort cohort, CohortPages pages) {
        this.cohort = cohort;
        this.pages = pages;
    }

    @GetMapping("/cohort")
    String cohort(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam @Nullable UUID programme,
            @RequestParam @Nullable String procedure,
            @RequestParam(defaultValue = "") String show,
            Model model) {
        model.addAttribute(
                "page",
                pages.page(
                        cohort.report(who, programme, procedure),
                        cohort.programmes(who),
                        cohort.procedures(),
                        RowFilter.of(show)));
        return "cohort/cohort";
    }
}
