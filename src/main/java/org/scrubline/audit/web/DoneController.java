package org.scrubline.audit.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditFilter;
import org.scrubline.audit.AuditLog;
import org.scrubline.audit.AuditSlice;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.TakesAlong.Size;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** What was done in the programme, for its director and its administrator. */
@Controller
class DoneController {

    private final AuditLog log;
    private final People people;
    private final DonePages pages;
    private final AuditCsv csv;

    DoneController(AuditLog log, People people, DonePages pages, AuditCsv csv) {
        this.log = log;
        this.people = people;
        this.pages = pages;
        this.csv = csv;
    }

    @GetMapping("/done")
    String page(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            @RequestParam @Nullable Long older,
            @RequestParam @Nullable Long newer,
            Model model,
            HttpServletResponse response) {
        Programme programme = people.programme(log.overseen(who));
        DoneForm form = DoneForm.of(typed);
        AuditSlice.Place place = new AuditSlice.Place(older, newer);
        DonePage page = form.filter(programme.zone())
                .fold(
                        filter -> pages.page(who, programme, form, log.done(who, programme.id(), filter, place)),
                        reasons -> refused(who, programme, form, reasons, response));
        model.addAttribute("page", page);
        return "audit/done";
    }

    /** A file of what the list shows; a filter that cannot be read leads back to the list, which says why. */
    @GetMapping("/done.csv")
    @TakesAlong(Size.MANY)
    void file(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            HttpServletResponse response)
            throws IOException {
        Programme programme = people.programme(log.overseen(who));
        DoneForm form = DoneForm.of(typed);
        AuditFilter filter = form.filter(programme.zone()).fold(AuditFilter.class::cast, reasons -> null);
        if (filter == null) {
            response.sendRedirect("/done?" + form.query().substring(1));
            return;
        }
        csv.whole(response, "what-was-done.csv", each -> log.allDone(who, programme.id(), filter, each));
    }

    private DonePage refused(
            SignedIn who, Programme programme, DoneForm form, List<Refusal> reasons, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return pages.refused(who, programme, form, reasons);
    }
}
