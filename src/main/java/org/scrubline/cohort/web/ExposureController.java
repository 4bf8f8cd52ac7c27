package org.scrubline.cohort.web;

import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.Exposure;
import org.scrubline.people.ExposurePlan;
import org.scrubline.people.LedProgrammes;
import org.scrubline.people.Person;
import org.scrubline.platform.Audited;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Cases done beside cases planned, a line a trainee and family. */
@Controller
class ExposureController {

    private final Exposure exposure;
    private final Wording wording;
    private final ApplicationEventPublisher events;

    ExposureController(Exposure exposure, Wording wording, ApplicationEventPublisher events) {
        this.exposure = exposure;
        this.wording = wording;
        this.events = events;
    }

    @GetMapping("/cohort/exposure")
    String exposure(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        Exposure.Report report = exposure.report(who, programme);
        UUID read = report.programme().id();
        Audited.Item list = new Audited.Item(
                "programme-list", read, null, report.programme().name());
        events.publishEvent(new RecordSeen(who, null, read, list, null));
        model.addAttribute("programme", report.programme());
        model.addAttribute("planned", report.planned());
        model.addAttribute("lines", table(report.lines()));
        model.addAttribute(
                "unplaced", report.unplaced().stream().map(Person::printedName).toList());
        model.addAttribute("plans", LedProgrammes.leads(who, read));
        return "cohort/exposure";
    }

    private TableView table(List<Exposure.Line> lines) {
        return new TableView(
                Stream.of("trainee", "family", "months", "planned", "done", "unsigned", "says")
                        .map(key -> new Column(
                                wording.text("exposure.column." + key),
                                !List.of("trainee", "family", "says").contains(key)))
                        .toList(),
                lines.stream().map(this::row).toList());
    }

    private List<Cell> row(Exposure.Line line) {
        return List.of(
                new Cell(
                        line.trainee().printedName(),
                        "/training/" + line.trainee().id()),
                Cell.of(wording.text("rubric.family." + line.family())),
                Cell.of(line.months()),
                Cell.of(String.format(Locale.ROOT, "%.1f", line.planned())),
                Cell.of(line.done()),
                Cell.of(line.unsigned()),
                Cell.of(says(line)));
    }

    private String says(Exposure.Line line) {
        if (line.months() < ExposurePlan.MONTHS_BEFORE) {
            return wording.text("exposure.early");
        }
        return line.behind() > 0 ? wording.text("exposure.behind", line.behind()) : wording.text("exposure.on-plan");
    }
}
