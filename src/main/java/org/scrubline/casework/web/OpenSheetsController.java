package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.OpenSheets;
import org.scrubline.people.LedProgrammes;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Open sheets of supervisors, and their way to another one. */
@Controller
@RequestMapping(OpenSheetsController.PATH)
class OpenSheetsController {

    static final String PATH = "/open-sheets";

    private final OpenSheets sheets;
    private final OpenSheetPages pages;
    private final LedProgrammes led;
    private final People people;
    private final Wording wording;

    OpenSheetsController(OpenSheets sheets, OpenSheetPages pages, LedProgrammes led, People people, Wording wording) {
        this.sheets = sheets;
        this.pages = pages;
        this.led = led;
        this.people = people;
        this.wording = wording;
    }

    @GetMapping
    String holders(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        Programme of = led.of(who, programme);
        model.addAttribute("programme", of);
        model.addAttribute("holders", pages.holders(of, sheets.holders(who, of.id())));
        return "casework/open-sheets";
    }

    @GetMapping("/{person}")
    String of(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID person,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        return show(who, led.of(who, programme), person, FormView.empty(), model);
    }

    @PostMapping("/{person}")
    String handOver(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID person,
            @RequestParam(required = false) @Nullable UUID programme,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme of = led.of(who, programme);
        return handOver(who, of, person, typed)
                .fold(
                        sheet -> {
                            redirect.addFlashAttribute("flash", wording.text("open-sheets.handed"));
                            return "redirect:" + PATH + "/" + person + "?programme=" + of.id();
                        },
                        reasons -> {
                            response.setStatus(422);
                            return show(who, of, person, new FormView(typed, wording.errors(reasons)), model);
                        });
    }

    private Attempt<UUID> handOver(SignedIn who, Programme programme, UUID person, Map<String, String> typed) {
        List<UUID> open = sheets.of(who, programme.id(), person).stream()
                .map(OpenSheets.Held::sheetId)
                .toList();
        return open.stream()
                .filter(sheet -> sheet.toString().equals(typed.get("sheet")))
                .findFirst()
                .map(sheet -> sheets.handOver(
                        who, programme.id(), sheet, supervisor(programme, typed), typed.getOrDefault("reason", "")))
                .orElseGet(() -> Attempt.refused(Refusal.at("sheet", "refusal.open-sheet.sheet")));
    }

    /** Nobody's id for what is not on the list, which the service says. */
    private UUID supervisor(Programme programme, Map<String, String> typed) {
        return people.holding(programme.id(), Role.SUPERVISOR).stream()
                .map(Person::id)
                .filter(id -> id.toString().equals(typed.get("supervisor")))
                .findFirst()
                .orElse(new UUID(0, 0));
    }

    private String show(SignedIn who, Programme programme, UUID person, FormView form, Model model) {
        String name = people.person(person).map(Person::printedName).orElseThrow(NotFound::new);
        List<OpenSheets.Held> open = sheets.of(who, programme.id(), person);
        // Whoever never had a sheet here is nobody this page knows.
        if (open.isEmpty() && !pages.known(programme, person)) {
            throw new NotFound();
        }
        model.addAttribute("page", pages.of(programme, person, name, open));
        model.addAttribute("form", form);
        return "casework/open-sheets-of";
    }
}
