package org.scrubline.people.web;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.people.Characteristic;
import org.scrubline.people.Characteristics;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What a trainee says about themselves for the tables on equality, or does not say. */
@Controller
@RequestMapping("/my-answers")
class CharacteristicsController {

    private final Characteristics characteristics;
    private final Wording wording;

    CharacteristicsController(Characteristics characteristics, Wording wording) {
        this.characteristics = characteristics;
        this.wording = wording;
    }

    /** One question with its answers. */
    record Question(String name, String label, List<Choice> choices) {}

    /** One answer to choose. */
    record Choice(String value, String label) {}

    @GetMapping
    ModelAndView form(@AuthenticationPrincipal SignedIn who) {
        if (!who.has(Role.TRAINEE)) {
            throw new NotFound();
        }
        Map<String, String> said = new LinkedHashMap<>();
        characteristics.own(who).forEach((characteristic, answer) -> said.put(characteristic.name(), answer));
        return page(new FormView(said, List.of()));
    }

    @PostMapping
    ModelAndView say(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            RedirectAttributes redirect) {
        Map<Characteristic, String> answers = new EnumMap<>(Characteristic.class);
        for (Characteristic characteristic : Characteristic.values()) {
            String answer = typed.getOrDefault(characteristic.name(), "");
            if (!answer.isEmpty()) {
                answers.put(characteristic, answer);
            }
        }
        return characteristics
                .say(who, answers)
                .fold(
                        count -> {
                            redirect.addFlashAttribute("flash", wording.text("characteristics.kept", count));
                            return new ModelAndView("redirect:/my-answers");
                        },
                        reasons -> refused(typed, reasons));
    }

    private ModelAndView refused(Map<String, String> typed, List<Refusal> reasons) {
        ModelAndView page = page(new FormView(typed, wording.errors(reasons)));
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private ModelAndView page(FormView form) {
        List<Question> questions = new ArrayList<>();
        for (Characteristic characteristic : Characteristic.values()) {
            String key = "characteristic." + characteristic;
            questions.add(new Question(
                    characteristic.name(),
                    wording.text(key),
                    characteristic.answers().stream()
                            .map(answer -> new Choice(answer, wording.text(key + "." + answer)))
                            .toList()));
        }
        return new ModelAndView("people/my-answers", Map.of("form", form, "questions", questions));
    }
}
