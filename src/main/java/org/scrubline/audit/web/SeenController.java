package org.scrubline.audit.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditLog;
import org.scrubline.audit.AuditSlice;
import org.scrubline.people.People;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.TakesAlong.Size;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Everyone's own page: who looked at my records. */
@Controller
class SeenController {

    private final AuditLog log;
    private final People people;
    private final AuditTables tables;
    private final AuditCsv csv;

    SeenController(AuditLog log, People people, AuditTables tables, AuditCsv csv) {
        this.log = log;
        this.people = people;
        this.tables = tables;
        this.csv = csv;
    }

    @GetMapping("/seen")
    String page(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam @Nullable Long older,
            @RequestParam @Nullable Long newer,
            Model model) {
        AuditSlice slice = log.seen(who, new AuditSlice.Place(older, newer));
        model.addAttribute("empty", slice.entries().isEmpty());
        model.addAttribute("table", tables.seen(slice.entries(), zone(who)));
        model.addAttribute("pager", Pager.of(slice, "/seen", ""));
        return "audit/seen";
    }

    @GetMapping("/seen.csv")
    @TakesAlong(Size.MANY)
    void file(@AuthenticationPrincipal SignedIn who, HttpServletResponse response) throws IOException {
        csv.own(response, "entries-about-me.csv", who.personId(), each -> log.allOwn(who, each));
    }

    /** The clock of the person's programme. */
    private ZoneId zone(SignedIn who) {
        return who.grants().stream()
                .map(SignedIn.Grant::programmeId)
                .sorted()
                .findFirst()
                .map(programme -> people.programme(programme).zone())
                .orElse(ZoneOffset.UTC);
    }
}
