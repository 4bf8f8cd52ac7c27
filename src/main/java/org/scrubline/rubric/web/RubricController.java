package org.scrubline.rubric.web;

import java.util.UUID;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.change.RubricPeople;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Rubrics to read. */
@Controller
class RubricController {

    private final Rubrics rubrics;
    private final RubricLibrary library;

    RubricController(Rubrics rubrics, RubricLibrary library) {
        this.rubrics = rubrics;
        this.library = library;
    }

    @GetMapping("/rubrics")
    String list(@AuthenticationPrincipal SignedIn who, Model model) {
        model.addAttribute(
                "rubrics", rubrics.published().stream().map(RubricHead::of).toList());
        model.addAttribute("mayReview", RubricPeople.reads(who));
        return "rubric/list";
    }

    @GetMapping("/rubrics/{id}")
    String read(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        PublishedRubric published = rubrics.byId(id).orElseThrow(NotFound::new);
        model.addAttribute("page", RubricPage.of(published, library.events(), library.sources()));
        model.addAttribute("mayReview", RubricPeople.reads(who));
        return "rubric/read";
    }
}
