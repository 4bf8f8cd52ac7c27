package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.CaseFile;
import org.scrubline.casework.Cases;
import org.scrubline.casework.SelfScores;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
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

/** The trainee's own levels, said before the supervisor's are read. */
@Controller
@RequestMapping("/cases/{id}/self-score")
class SelfScoreController {

    private static final String FIELD = "level.";

    private final Cases cases;
    private final SelfScores selfScores;
    private final CasePages pages;
    private final Wording wording;

    SelfScoreController(Cases cases, SelfScores selfScores, CasePages pages, Wording wording) {
        this.cases = cases;
        this.selfScores = selfScores;
        this.pages = pages;
        this.wording = wording;
    }

    @GetMapping
    String form(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Model model) {
        CaseFile file = own(who, id);
        return show(who, file, selfScores.of(id, who.personId()), List.of(), model);
    }

    @PostMapping
    String save(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        CaseFile file = own(who, id);
        Map<String, Integer> levels = levels(typed);
        Attempt<Integer> attempt = selfScores.save(who, id, levels);
        return attempt.fold(
                count -> {
                    redirect.addFlashAttribute("flash", wording.text("case.self-score.saved", count));
                    return "redirect:/cases/" + id;
                },
                reasons -> {
                    response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
                    return show(who, file, levels, reasons, model);
                });
    }

    private CaseFile own(SignedIn who, UUID id) {
        CaseFile file = cases.open(who, id);
        if (!file.hasTrainee(who.personId())) {
            throw new NotFound();
        }
        return file;
    }

    /** What was sent per step; something that is no level counts as level 0, which is refused. */
    private static Map<String, Integer> levels(Map<String, String> typed) {
        Map<String, Integer> levels = new LinkedHashMap<>();
        typed.forEach((field, value) -> {
            if (field.startsWith(FIELD) && !value.isEmpty()) {
                levels.put(field.substring(FIELD.length()), value.matches("[1-5]") ? Integer.parseInt(value) : 0);
            }
        });
        return levels;
    }

    private String show(SignedIn who, CaseFile file, Map<String, Integer> levels, List<Refusal> reasons, Model model) {
        UUID id = file.surgicalCase().id();
        model.addAttribute(
                "page",
                SelfScorePage.of(
                        "/cases/" + id,
                        pages.title(file.surgicalCase()),
                        selfScores.locked(id, who.personId()),
                        wording.errors(reasons),
                        selfScores.rubric(id),
                        levels));
        return "casework/self-score";
    }
}
