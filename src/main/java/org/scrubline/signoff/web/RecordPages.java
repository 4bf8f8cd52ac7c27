package org.scrubline.signoff.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.SheetContent;
import org.scrubline.signoff.SheetContent.CaseFacts;
import org.scrubline.signoff.SheetContent.EventLine;
import org.scrubline.signoff.web.RecordPage.EventView;
import org.scrubline.signoff.web.RecordPage.Fact;
import org.scrubline.signoff.web.RecordPage.Line;
import org.scrubline.signoff.web.RecordPage.PhaseView;
import org.springframework.stereotype.Component;

/** Puts what is or will be signed into words. */
@Component
class RecordPages {

    private final RecordWords words;
    private final StepWords steps;
    private final RubricLibrary library;

    RecordPages(RecordWords words, StepWords steps, RubricLibrary library) {
        this.words = words;
        this.steps = steps;
        this.library = library;
    }

    /**
     * The page.
     *
     * @param rubric the version the content names
     * @param self the trainee's own level by step code, empty when there is none to show
     */
    RecordPage of(SheetContent content, Rubric rubric, Map<String, Integer> self) {
        return new RecordPage(
                content.trainee().name(),
                facts(content),
                lines(content),
                words.say(content.verdict().verdict().messageKey()),
                content.verdict().toVerdict().reasons().stream().map(words::say).toList(),
                phases(content, rubric, self),
                !self.isEmpty(),
                content.events().stream().map(event -> event(event, rubric)).toList(),
                feedback(content));
    }

    private List<Fact> facts(SheetContent content) {
        CaseFacts operation = content.operation();
        return List.of(
                new Fact(content.trainee().name(), null),
                new Fact(null, content.rubric().title()),
                new Fact(null, words.say("signoff.case", operation.reference())),
                new Fact(null, words.say("signoff.eye." + operation.eye().name())),
                new Fact(null, words.at(operation.endedAt(), operation.endedZone())));
    }

    private List<Line> lines(SheetContent content) {
        List<Line> lines = new ArrayList<>(facts(content, content.operation()));
        if (content.replaces() != null) {
            lines.add(line("signoff.version.reason", content.replaces().reason()));
        }
        return lines;
    }

    private List<Line> facts(SheetContent content, CaseFacts operation) {
        String part = content.confirmedPart() == null
                ? "signoff.unsaid"
                : "signoff.part." + content.confirmedPart().name();
        String given = content.givenSupervision() == null
                ? "signoff.unsaid"
                : "signoff.supervision." + content.givenSupervision().name();
        return List.of(
                line("signoff.part", words.say(part)),
                line("signoff.supervision.given", words.say(given)),
                line(
                        "signoff.supervision.planned",
                        words.say("signoff.supervision."
                                + operation.plannedSupervision().name())),
                line("signoff.complexity", complexity(operation)),
                line("signoff.site", operation.siteCode()),
                line("signoff.first-scored", words.at(content.firstScoredAt(), operation.endedZone())),
                line(
                        "signoff.rubric",
                        words.say(
                                "signoff.rubric.version",
                                content.rubric().title(),
                                content.rubric().version())));
    }

    private String complexity(CaseFacts operation) {
        List<String> parts = new ArrayList<>();
        parts.add(words.say("signoff.band", operation.band().name()));
        operation
                .factors()
                .forEach(code -> parts.add(library.complexity().factor(code).name()));
        if (operation.complexitySetLate()) {
            parts.add(words.say("signoff.complexity.late"));
        }
        return String.join("; ", parts);
    }

    private List<PhaseView> phases(SheetContent content, Rubric rubric, Map<String, Integer> self) {
        Map<String, SheetContent.StepLine> said =
                content.steps().stream().collect(Collectors.toMap(SheetContent.StepLine::code, line -> line));
        Map<String, String> measured = content.measures().stream()
                .collect(Collectors.toMap(SheetContent.MeasureLine::code, SheetContent.MeasureLine::value));
        return rubric.phases().stream()
                .map(phase -> new PhaseView(
                        "rubric.phase." + phase.phase().name(),
                        phase.steps().stream()
                                .map(step -> steps.of(
                                        step,
                                        Objects.requireNonNull(said.get(step.code())),
                                        measured,
                                        self.get(step.code())))
                                .toList()))
                .toList();
    }

    private EventView event(EventLine event, Rubric rubric) {
        EventCatalogue catalogue = library.events();
        List<String> facts = new ArrayList<>();
        if (event.reason() != null) {
            facts.add(words.say("signoff.reason." + event.reason().name()));
        }
        if (event.blocking()) {
            facts.add(words.say("signoff.event.blocks"));
        }
        String place = event.step() == null
                ? null
                : rubric.find(event.step()).map(Step::name).orElse(event.step());
        return new EventView(catalogue.kind(event.code()).name(), place, facts, event.action());
    }

    private List<Line> feedback(SheetContent content) {
        List<Line> written = new ArrayList<>();
        if (!content.strength().isEmpty()) {
            written.add(line("signoff.strength", content.strength()));
        }
        if (!content.nextStep().isEmpty()) {
            written.add(line("signoff.next-step", content.nextStep()));
        }
        return written;
    }

    private Line line(String labelKey, String text) {
        return new Line(words.say(labelKey), text);
    }
}
