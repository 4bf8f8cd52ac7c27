package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import org.scrubline.rubric.EventKind;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Step;

/**
 * What a device must know to read taps and judge a sheet by itself. Holds no name of a person.
 *
 * @param trainee what the trainee is called on the device
 * @param part what the log says of the trainee's part
 * @param supervision what was planned
 * @param converted whether steps that belong to the case only after a conversion belong to it
 * @param words message patterns by key
 */
record SheetFacts(
        String trainee,
        String part,
        String supervision,
        boolean converted,
        List<StepFacts> steps,
        List<EventKind> events,
        Map<String, String> words) {

    /** A step; {@code coaching} is what to say for next time, empty where nothing is. */
    record StepFacts(
            String code,
            String name,
            String phase,
            boolean critical,
            boolean onlyWhenConverted,
            List<String> levels,
            String coaching,
            List<MeasureFacts> measures) {
        static StepFacts of(Step step) {
            return new StepFacts(
                    step.code(),
                    step.name(),
                    step.phase().name(),
                    step.critical(),
                    step.onlyWhenConverted(),
                    step.levels(),
                    step.coaching().isEmpty() ? "" : step.coaching().get(0),
                    step.measures().stream().map(MeasureFacts::of).toList());
        }
    }

    /** What can be measured at a step, in the order of the rubric. */
    record MeasureFacts(String code, String name, String kind) {
        static MeasureFacts of(Measure measure) {
            return new MeasureFacts(
                    measure.code(), measure.name(), measure.kind().name());
        }
    }

    static SheetFacts of(Draft draft, Map<String, String> words) {
        return new SheetFacts(
                draft.traineeName(),
                draft.claimedPart().name(),
                draft.surgicalCase().plannedSupervision().name(),
                draft.surgicalCase().convertedTo() != null,
                draft.rubric().steps().stream().map(StepFacts::of).toList(),
                draft.catalogue().kinds(),
                words);
    }
}
