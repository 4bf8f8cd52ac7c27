package org.scrubline.demo.plan;

import java.math.BigDecimal;
import java.util.List;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Step;

/**
 * The rubrics of the demo programme. The fornix-based one had three versions: 1.0, 1.1 with a narrower band for a
 * measure of TF15, and 2.0, in which "chamber kept formed" (TF18) became a step of its own. The others are as shipped.
 */
public final class DemoRubrics {

    /** A version with the first month in which new cases are scored with it. */
    public record Version(Rubric rubric, int firstMonth) {}

    private static final int NARROWER = 9;
    private static final int SPLIT = 16;
    private static final String CHANGED = "TF15-STABLE";
    private static final BigDecimal WIDER_FROM = BigDecimal.TEN;

    private final RubricLibrary library;
    private final List<Version> fornix;

    public DemoRubrics(RubricLibrary library) {
        this.library = library;
        Rubric shipped = library.rubric(Procedures.TRAB_FORNIX);
        List<Step> before = shipped.steps().stream()
                .filter(step -> !step.code().equals("TF18"))
                .toList();
        this.fornix = List.of(
                new Version(
                        version(
                                shipped,
                                "1.0",
                                before.stream().map(DemoRubrics::wider).toList()),
                        1),
                new Version(version(shipped, "1.1", before), NARROWER),
                new Version(version(shipped, "2.0", shipped.steps()), SPLIT));
    }

    /** Versions that follow each other, oldest first. */
    public List<Version> versions() {
        return fornix;
    }

    /** The rubrics that never changed. */
    public List<Rubric> unchanged() {
        return library.rubrics().stream()
                .filter(rubric -> !rubric.procedure().equals(Procedures.TRAB_FORNIX))
                .toList();
    }

    /** The rubric a case of a month is scored with. */
    public Rubric of(String procedure, int month) {
        return procedure.equals(Procedures.TRAB_FORNIX)
                ? fornix.stream()
                        .filter(version -> version.firstMonth() <= month)
                        .reduce((older, newer) -> newer)
                        .orElseThrow()
                        .rubric()
                : library.rubric(procedure);
    }

    private static Rubric version(Rubric shipped, String version, List<Step> steps) {
        return new Rubric(shipped.procedure(), version, shipped.title(), shipped.family(), steps);
    }

    private static Step wider(Step step) {
        List<Measure> measures = step.measures().stream()
                .map(measure -> measure.code().equals(CHANGED) ? wider(measure) : measure)
                .toList();
        return new Step(
                step.code(),
                step.name(),
                step.phase(),
                step.critical(),
                step.sees(),
                measures,
                step.levels(),
                step.hazards(),
                step.coaching(),
                step.sources(),
                step.onlyWhenConverted());
    }

    private static Measure wider(Measure measure) {
        return new Measure(
                measure.code(),
                measure.name(),
                measure.kind(),
                measure.unit(),
                measure.target(),
                WIDER_FROM,
                measure.acceptTo(),
                WIDER_FROM + "–" + measure.acceptTo(),
                measure.stepSize(),
                measure.sources());
    }
}
