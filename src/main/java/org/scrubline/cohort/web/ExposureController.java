package org.scrubline.cohort.web;

import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.cohort.Exposure;
import org.scrubline.people.LedProgrammes;
import org.scrubline.people.Person;
import org.scrubline.platform.Audited;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
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
    private final ExposureWords words;
    private final ApplicationEventPublisher events;

    ExposureController(Exposure exposure, ExposureWords words, ApplicationEventPublisher events) {
        this.exposure = exposure;
        this.words = words;
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
        model.addAttribute("lines", words.table(report));
        model.addAttribute(
                "unplaced", report.unplaced().stream().map(Person::printedName).toList());
        model.addAttribute("plans", LedProgrammes.leads(who, read));
        return "cohort/exposure";
    }

    @GetMapping("/cohort/exposure/cases")
    String cases(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            @RequestParam(required = false) @Nullable UUID trainee,
            @RequestParam(defaultValue = "") String family,
            Model model) {
        Optional<Family> of = Stream.of(Family.values())
                .filter(one -> one.name().equals(family))
                .findFirst();
        if (trainee == null || of.isEmpty()) {
            throw new NotFound();
        }
        Exposure.LineCases behind = exposure.cases(who, programme, trainee, of.get());
        UUID read = behind.programme().id();
        events.publishEvent(new RecordSeen(who, trainee, read, new Audited.Item("case-list", trainee, null, ""), null));
        model.addAttribute("name", behind.trainee().printedName());
        model.addAttribute("family", words.family(behind.family()));
        model.addAttribute("programme", behind.programme());
        model.addAttribute("table", words.cases(behind, who.has(Role.DIRECTOR, read)));
        return "cohort/exposure-cases";
    }
}
