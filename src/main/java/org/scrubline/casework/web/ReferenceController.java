package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.reference.ReferenceCases;
import org.scrubline.casework.reference.ReferenceDraft;
import org.scrubline.casework.reference.ReferenceFile;
import org.scrubline.casework.reference.ReferenceList;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.Rubric;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Reference cases: listed, added and closed by a director, scored by every supervisor. */
@Controller
@RequestMapping("/reference-cases")
class ReferenceController {

    private static final String FIELD = "level.";

    private final ReferenceCases references;
    private final ReferencePages pages;
    private final Wording wording;

    ReferenceController(ReferenceCases references, ReferencePages pages, Wording wording) {
        this.references = references;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    String list(@AuthenticationPrincipal SignedIn who, @RequestParam @Nullable UUID programme, Model model) {
        return show(who, references.list(who, programme), FormView.empty(), model);
    }

    @PostMapping
    String add(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam @Nullable UUID programme,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        ReferenceList list = references.list(who, programme);
        if (!list.directs()) {
            throw new NotFound();
        }
        ReferenceDraft draft = new ReferenceDraft(
                text(typed, "reference"),
                text(typed, "title"),
                text(typed, "procedure"),
                text(typed, "band"),
                text(typed, "film"),
                text(typed, "closesOn"));
        return references
                .add(who, list.programme().id(), draft)
                .fold(
                        added -> done(redirect, "/reference-cases/" + added.id(), "reference.added"),
                        reasons -> show(who, list, refused(typed, reasons, response), model));
    }

    @GetMapping("/{id}")
    String page(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        return show(who, references.open(who, id), FormView.empty(), model);
    }

    @PostMapping("/{id}/scores")
    String score(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        ReferenceFile file = references.open(who, id);
        if (!who.has(Role.SUPERVISOR, file.reference().programmeId())) {
            throw new NotFound();
        }
        return references
                .score(who, id, complete(file.rubric(), typed))
                .fold(
                        scoring -> done(redirect, "/reference-cases/" + id, "reference.scored"),
                        reasons -> show(who, references.open(who, id), refused(typed, reasons, response), model));
    }

    @PostMapping("/{id}/close")
    String close(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        references.close(who, id);
        return done(redirect, "/reference-cases/" + id, "reference.closed.now");
    }

    /** The answers by step code; what the reader did not touch is missing. */
    static Map<String, String> answers(Map<String, String> typed) {
        Map<String, String> answers = new LinkedHashMap<>();
        typed.forEach((field, value) -> {
            if (field.startsWith(FIELD) && !value.isEmpty()) {
                answers.put(field.substring(FIELD.length()), value);
            }
        });
        return answers;
    }

    private static Map<String, String> complete(Rubric rubric, Map<String, String> typed) {
        Map<String, String> answers = answers(typed);
        if (text(typed, "rest").equals(ReferenceCases.NOT_SEEN)) {
            rubric.steps().forEach(step -> answers.putIfAbsent(step.code(), ReferenceCases.NOT_SEEN));
        }
        return answers;
    }

    private FormView refused(Map<String, String> typed, List<Refusal> reasons, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return new FormView(typed, wording.errors(reasons));
    }

    private String done(RedirectAttributes redirect, String path, String key) {
        redirect.addFlashAttribute("flash", wording.text(key));
        return "redirect:" + path;
    }

    private String show(SignedIn who, ReferenceList list, FormView form, Model model) {
        model.addAttribute("page", pages.list(who, list));
        model.addAttribute("form", form);
        return "casework/reference-cases";
    }

    private String show(SignedIn who, ReferenceFile file, FormView form, Model model) {
        model.addAttribute("page", pages.page(who, file, form));
        return "casework/reference-case";
    }

    private static String text(Map<String, String> typed, String field) {
        return typed.getOrDefault(field, "");
    }
}
