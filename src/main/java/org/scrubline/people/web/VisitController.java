package org.scrubline.people.web;

import org.scrubline.people.Visitors;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** A visitor's home: what is open to read, what for and until when. */
@Controller
class VisitController {

    private final Visitors visitors;
    private final VisitorPages pages;

    VisitController(Visitors visitors, VisitorPages pages) {
        this.visitors = visitors;
        this.pages = pages;
    }

    @GetMapping("/visits")
    String page(@AuthenticationPrincipal SignedIn who, Model model) {
        if (!who.has(Role.VISITOR)) {
            throw new NotFound();
        }
        model.addAttribute("open", pages.open(visitors.open(who)));
        return "people/visits";
    }
}
