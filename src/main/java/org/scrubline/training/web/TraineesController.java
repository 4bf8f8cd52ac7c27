package org.scrubline.training.web;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.LedProgrammes;
import org.scrubline.people.Programme;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.training.TrainingFile;
import org.scrubline.training.TrainingRecords;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The trainees of a programme with what is missing in their records; trainees go on to their own. */
@Controller
class TraineesController {

    private final TrainingRecords records;
    private final TrainingPages pages;
    private final TrainingWords words;

    TraineesController(TrainingRecords records, TrainingPages pages, TrainingWords words) {
        this.records = records;
        this.pages = pages;
        this.words = words;
    }

    @GetMapping("/training")
    String list(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        List<Programme> programmes = records.programmes(who);
        if (programmes.isEmpty() && who.has(Role.TRAINEE)) {
            return "redirect:/training/" + who.personId();
        }
        Programme read = programmes.stream()
                .filter(one -> programme == null || one.id().equals(programme))
                .findFirst()
                .orElseThrow(NotFound::new);
        model.addAttribute("programme", read);
        model.addAttribute("programmes", programmes);
        model.addAttribute("trainees", table(records.all(who, read)));
        model.addAttribute("leads", LedProgrammes.leads(who, read.id()));
        model.addAttribute("own", who.has(Role.TRAINEE) ? "/training/" + who.personId() : null);
        return "training/trainees";
    }

    private TableView table(List<TrainingFile> files) {
        return new TableView(
                Stream.of("trainee", "missing", "waiting")
                        .map(key -> new Column(words.say("training.column." + key), key.equals("waiting")))
                        .toList(),
                files.stream().map(this::row).toList());
    }

    private List<Cell> row(TrainingFile file) {
        List<String> missing = pages.missing(file.entries());
        return List.of(
                new Cell(
                        file.trainee().printedName(),
                        "/training/" + file.trainee().id()),
                Cell.of(missing.isEmpty() ? words.say("training.missing.none") : String.join(" ", missing)),
                Cell.of(file.waiting().size()));
    }
}
