package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.Reflection;
import org.scrubline.casework.Reflections;
import org.scrubline.people.People;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
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

/** A trainee's notes for themselves. No page of anybody else shows one. */
@Controller
@RequestMapping("/reflections")
class ReflectionController {

    private final Reflections reflections;
    private final Rubrics rubrics;
    private final People people;
    private final CaseWords words;
    private final Wording wording;

    ReflectionController(Reflections reflections, Rubrics rubrics, People people, CaseWords words, Wording wording) {
        this.reflections = reflections;
        this.rubrics = rubrics;
        this.people = people;
        this.words = words;
        this.wording = wording;
    }

    @GetMapping
    String list(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String procedure,
            @RequestParam(defaultValue = "") String step,
            Model model) {
        model.addAttribute("page", page(who, procedure, step, FormView.empty()));
        return "casework/reflections";
    }

    @PostMapping
    String write(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(defaultValue = "") String procedure,
            @RequestParam(defaultValue = "") String step,
            @RequestParam(defaultValue = "") String note,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return reflections
                .write(who, procedure, step, note)
                .fold(
                        id -> {
                            redirect.addFlashAttribute("flash", wording.text("reflections.kept"));
                            return "redirect:/reflections";
                        },
                        reasons -> {
                            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
                            FormView form = new FormView(Map.of("note", note), wording.errors(reasons));
                            model.addAttribute("page", page(who, procedure, step, form));
                            return "casework/reflections";
                        });
    }

    @PostMapping("/{id}/remove")
    String remove(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        reflections.remove(who, id);
        redirect.addFlashAttribute("flash", wording.text("reflections.removed"));
        return "redirect:/reflections";
    }

    private ReflectionsPage page(SignedIn who, String procedure, String step, FormView form) {
        ZoneId zone = zone(who);
        List<PublishedRubric> versions = rubrics.published();
        return new ReflectionsPage(
                about(versions, procedure, step),
                procedure,
                step,
                form,
                reflections.of(who).stream()
                        .map(note -> note(versions, note, zone))
                        .toList());
    }

    /** By the clock of a programme this person trains in. */
    private ZoneId zone(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> grant.role() == Role.TRAINEE)
                .map(SignedIn.Grant::programmeId)
                .sorted()
                .findFirst()
                .map(programme -> people.programme(programme).zone())
                .orElseThrow(NotFound::new);
    }

    private ReflectionsPage.Note note(List<PublishedRubric> versions, Reflection note, ZoneId zone) {
        return new ReflectionsPage.Note(
                note.id().toString(),
                about(versions, note.procedure(), note.step()),
                words.when(note.writtenAt(), zone),
                note.note());
    }

    private String about(List<PublishedRubric> versions, String procedure, String step) {
        if (procedure.isEmpty()) {
            return wording.text("reflections.about.training");
        }
        String title = words.procedure(procedure);
        return versions.stream()
                .filter(version -> version.rubric().procedure().equals(procedure))
                .flatMap(version -> version.rubric().find(step).stream())
                .map(Step::name)
                .findFirst()
                .map(name -> wording.text("reflections.about.step", title, step, name))
                .orElse(title);
    }
}
