package org.scrubline.archive.web;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.archive.OwnArchive;
import org.scrubline.platform.FreshLogIn;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.Wording;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** Says what is kept about whoever asks, and gives it to them as a file. There is no address for anybody else's. */
@Controller
class ArchiveController {

    private final OwnArchive archive;
    private final FreshLogIn fresh;
    private final Wording wording;

    ArchiveController(OwnArchive archive, FreshLogIn fresh, Wording wording) {
        this.archive = archive;
        this.fresh = fresh;
        this.wording = wording;
    }

    /** A part and its number of rows. */
    record Line(String title, int rows) {}

    @GetMapping("/my-archive")
    String page(@AuthenticationPrincipal SignedIn who, HttpSession session, Model model) {
        List<Line> lines = archive.kept(who).stream()
                .filter(kept -> kept.rows() > 0)
                .map(kept -> new Line(wording.text("archive.part." + kept.part()), kept.rows()))
                .toList();
        model.addAttribute("organisation", who.organisationName());
        model.addAttribute("lines", lines);
        model.addAttribute("recent", fresh.fresh(session));
        return "archive/my-archive";
    }

    @PostMapping("/my-archive.zip")
    @TakesAlong(TakesAlong.Size.MANY)
    @Nullable
    ModelAndView file(
            @AuthenticationPrincipal SignedIn who, HttpSession session, Model model, HttpServletResponse response)
            throws IOException {
        if (!fresh.fresh(session)) {
            return new ModelAndView(page(who, session, model), model.asMap(), HttpStatus.FORBIDDEN);
        }
        response.setContentType("application/zip");
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"kept-about-me.zip\"");
        archive.write(who, response.getOutputStream());
        return null;
    }
}
