package org.scrubline.rubric.web;

import java.util.List;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.EventKind;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Sources;
import org.scrubline.rubric.Step;

/** The page of one published rubric, source keys resolved. */
record RubricPage(RubricHead head, List<PhaseView> phases, List<EventView> events) {

    record PhaseView(String nameKey, List<StepView> steps) {}

    /** A step as read; {@code sources} are citations. */
    record StepView(Step step, List<MeasureView> measures, List<String> sources) {}

    /** A measure as read; the name carries the unit, {@code sources} are citations. */
    record MeasureView(String textKey, String name, String target, String accepted, List<String> sources) {}

    record EventView(String name, String effectKey) {}

    static RubricPage of(PublishedRubric published, EventCatalogue events, Sources sources) {
        List<PhaseView> phases = published.rubric().phases().stream()
                .map(phase -> new PhaseView(
                        key(phase.phase()),
                        phase.steps().stream().map(step -> step(step, sources)).toList()))
                .toList();
        return new RubricPage(
                RubricHead.of(published),
                phases,
                events.kinds().stream().map(RubricPage::event).toList());
    }

    private static String key(Phase phase) {
        return "rubric.phase." + phase;
    }

    private static StepView step(Step step, Sources sources) {
        return new StepView(
                step,
                step.measures().stream()
                        .map(measure -> measure(measure, sources))
                        .toList(),
                step.sources().stream().map(sources::citation).toList());
    }

    private static MeasureView measure(Measure measure, Sources sources) {
        boolean bandIsTarget = measure.accepted().equals(measure.target());
        return new MeasureView(
                bandIsTarget ? "rubric.read.measure.target" : "rubric.read.measure",
                measure.unit().isEmpty() ? measure.name() : measure.name() + ", " + measure.unit(),
                measure.target(),
                measure.accepted(),
                measure.sources().stream().map(sources::citation).toList());
    }

    private static EventView event(EventKind kind) {
        if (kind.code().equals(EventCatalogue.TAKEOVER)) {
            return new EventView(kind.name(), "rubric.event.blocks-for-safety");
        }
        return new EventView(kind.name(), kind.blocking() ? "rubric.event.blocks" : "rubric.event.recorded");
    }
}
