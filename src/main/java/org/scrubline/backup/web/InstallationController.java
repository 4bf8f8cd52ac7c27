package org.scrubline.backup.web;

import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** How the server, its database and its backups are doing; for administrators. */
@Controller
class InstallationController {

    private final InstallationPages pages;

    InstallationController(InstallationPages pages) {
        this.pages = pages;
    }

    @GetMapping("/health-of-installation")
    String page(@AuthenticationPrincipal SignedIn who, Model model) {
        if (!who.has(Role.ADMINISTRATOR)) {
            throw new NotFound();
        }
        model.addAttribute("page", pages.page());
        return "backup/installation";
    }
}
