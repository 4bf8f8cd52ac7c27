package org.scrubline.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Introductions;
import org.scrubline.people.LedProgrammes;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Who was introduced to scoring and when, and who was not yet. */
@Controller
@RequestMapping(ScorerTrainingController.PATH)
class ScorerTrainingController {

    static final String PATH = "/scorer-training";
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);
    private static final UUID NOBODY = new UUID(0, 0);

    private final Introductions introductions;
    private final People people;
    private final LedProgrammes led;
    private final Wording wording;

    ScorerTrainingController(Introductions introductions, People people, LedProgrammes led, Wording wording) {
        this.introductions = introductions;
        this.people = people;
        this.led = led;
        this.wording = wording;
    }

    @GetMapping
    String page(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        return show(who, led.of(who, programme), FormView.empty(), model);
    }

    @PostMapping
    String introduce(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme of = led.of(who, programme);
        UUID person = may(of).stream()
                .map(Person::id)
                .filter(id -> id.toString().equals(typed.get("supervisor")))
                .findFirst()
                .orElse(NOBODY);
        return introductions
                .record(who, of.id(), person, typed.getOrDefault("day", ""))
                .fold(
                        day -> {
                            redirect.addFlashAttribute("flash", wording.text("settings.introduced"));
                            return "redirect:" + PATH + "?programme=" + of.id();
                        },
                        reasons -> {
                            response.setStatus(422);
                            return show(who, of, new FormView(typed, wording.errors(reasons)), model);
                        });
    }

    private String show(SignedIn who, Programme programme, FormView form, Model model) {
        Map<UUID, LocalDate> days = introductions.of(programme.id());
        List<Person> supervisors = people.holding(programme.id(), Role.SUPERVISOR);
        model.addAttribute("programme", programme);
        model.addAttribute("number", supervisors.size());
        model.addAttribute(
                "without",
                supervisors.stream()
                        .filter(one -> !days.containsKey(one.id()))
                        .map(Person::printedName)
                        .toList());
        model.addAttribute("introduced", table(may(programme), days));
        model.addAttribute(
                "persons",
                may(programme).stream()
                        .map(one -> new ZoneOptions.Option(one.id().toString(), one.printedName()))
                        .toList());
        model.addAttribute("mayIntroduce", who.has(Role.DIRECTOR, programme.id()));
        model.addAttribute("form", form);
        return "people/scorer-training";
    }

    /** Supervisors, and trainees who may teach one day. */
    private List<Person> may(Programme programme) {
        return Stream.of(Role.SUPERVISOR, Role.TRAINEE)
                .flatMap(role -> people.holding(programme.id(), role).stream())
                .distinct()
                .toList();
    }

    private TableView table(List<Person> persons, Map<UUID, LocalDate> days) {
        return new TableView(
                Stream.of("person", "introduced")
                        .map(key -> new Column(wording.text("settings.column." + key), false))
                        .toList(),
                persons.stream()
                        .flatMap(one -> Stream.ofNullable(days.get(one.id()))
                                .map(day -> List.of(Cell.of(one.printedName()), Cell.of(DAY.format(day)))))
                        .toList());
    }
}
