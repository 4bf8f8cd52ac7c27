package org.scrubline.rubric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The shipped rubrics are our own text; the expected lists below were counted by hand in that text. */
class RubricLibraryTests {

    private static final RubricLibrary LIBRARY = RubricLibrary.shipped();

    static List<Rubric> rubrics() {
        return LIBRARY.rubrics();
    }

    @Test
    void everyProcedureHasItsRubric() {
        assertThat(rubrics()).extracting(Rubric::procedure).containsExactlyElementsOf(Procedures.ALL);
        assertThat(rubrics()).extracting(Rubric::version).containsOnly("1.0");
    }

    @ParameterizedTest
    @CsvSource({
        "TRAB_FORNIX, TRABECULECTOMY, 19, 10",
        "TRAB_LIMBUS, TRABECULECTOMY, 19, 10",
        "DRAINAGE_DEVICE, DRAINAGE_DEVICE, 12, 6",
        "DEEP_SCLERECTOMY, DEEP_SCLERECTOMY, 20, 12",
        "GEL_STENT, GEL_STENT, 7, 5",
        "GEL_STENT_OPEN, GEL_STENT, 11, 7",
        "NEEDLING, NEEDLING, 6, 5",
        "POSTOP_CARE, POST_OPERATIVE_CARE, 8, 4"
    })
    void everyProcedureHasItsStepsAndCriticalSteps(String procedure, Family family, int steps, int critical) {
        Rubric rubric = LIBRARY.rubric(procedure);

        assertThat(rubric.family()).isEqualTo(family);
        assertThat(rubric.steps()).hasSize(steps);
        assertThat(rubric.criticalSteps()).hasSize(critical);
    }

    @Test
    void theVariantsTakeSharedStepsUnchanged() {
        Rubric fornix = LIBRARY.rubric(Procedures.TRAB_FORNIX);
        Rubric limbus = LIBRARY.rubric(Procedures.TRAB_LIMBUS);

        assertThat(codes(limbus))
                .containsExactly(
                        "TF01", "TF02", "TL03", "TL04", "TF05", "TL06", "TF07", "TF08", "TF09", "TF10", "TF11", "TF12",
                        "TF13", "TF14", "TF15", "TL16", "TF17", "TF18", "TF19");
        assertThat(limbus.step("TF09")).isEqualTo(fornix.step("TF09"));
        assertThat(limbus.step("TL06").measures())
                .extracting(Measure::code)
                .containsExactly("TL06-PIECES", "TL06-TIME", "TL06-STRENGTH", "TL06-DISTANCE", "TL06-EDGES");
    }

    @Test
    void deepSclerectomyOffersConversionStepsOnlyWhenConverted() {
        Rubric rubric = LIBRARY.rubric(Procedures.DEEP_SCLERECTOMY);

        assertThat(codes(rubric))
                .containsExactlyInAnyOrder(
                        "TF01", "TF02", "TF03", "TF04", "TF05", "TF06", "TF07", "DS01", "DS02", "DS03", "DS04", "DS05",
                        "DS06", "DS07", "TF12", "TF13", "DS08", "TF17", "TF18", "TF19");
        assertThat(rubric.steps().stream().filter(Step::onlyWhenConverted).map(Step::code))
                .containsExactly("DS07", "TF12", "TF13");
        assertThat(LIBRARY.rubric(Procedures.TRAB_FORNIX).step("TF12").onlyWhenConverted())
                .isFalse();
    }

    @Test
    void theOpenGelStentAddsOpeningAndClosureOfConjunctiva() {
        assertThat(codes(LIBRARY.rubric(Procedures.GEL_STENT_OPEN)))
                .containsExactly(
                        "GS01", "TF03", "TF04", "TF05", "GS02", "GS03", "GS04", "GS05", "GS06", "TF16", "GS07");
    }

    @ParameterizedTest
    @MethodSource("rubrics")
    void codesAreUniqueAndTextsComplete(Rubric rubric) {
        assertThat(codes(rubric)).doesNotHaveDuplicates();
        assertThat(measures(rubric)).extracting(Measure::code).doesNotHaveDuplicates();
        assertThat(rubric.steps()).allSatisfy(step -> {
            assertThat(step.levels()).hasSize(5).doesNotHaveDuplicates().allMatch(level -> level.endsWith("."));
            assertThat(step.hazards()).isNotEmpty();
            assertThat(step.coaching()).isNotEmpty();
            assertThat(step.measures()).isNotEmpty();
        });
    }

    @ParameterizedTest
    @MethodSource("rubrics")
    void acceptedBandsRunUpwardsAndCountsStartAtZero(Rubric rubric) {
        assertThat(measures(rubric)).allSatisfy(measure -> {
            if (measure.acceptFrom() != null && measure.acceptTo() != null) {
                assertThat(measure.acceptFrom()).isLessThanOrEqualTo(measure.acceptTo());
            }
            if (measure.acceptFrom() != null) {
                assertThat(measure.acceptFrom()).isNotNegative();
            }
            assertThat(measure.stepSize() == null).isEqualTo(measure.kind() == MeasureKind.YES_NO);
        });
    }

    @ParameterizedTest
    @MethodSource("rubrics")
    void everySourceKeyResolves(Rubric rubric) {
        assertThat(rubric.steps()).allSatisfy(step -> {
            assertThat(step.sources()).allMatch(LIBRARY.sources()::knows);
            assertThat(step.measures())
                    .allSatisfy(measure ->
                            assertThat(measure.sources()).isNotEmpty().allMatch(LIBRARY.sources()::knows));
        });
    }

    @Test
    void everyListedSourceIsUsed() {
        Stream<String> inSteps = rubrics().stream()
                .flatMap(rubric -> rubric.steps().stream())
                .flatMap(step -> Stream.concat(
                        step.sources().stream(),
                        step.measures().stream().flatMap(measure -> measure.sources().stream())));
        Stream<String> inFactors = LIBRARY.complexity().factors().stream().flatMap(factor -> factor.sources().stream());

        assertThat(Stream.concat(inSteps, inFactors).distinct())
                .containsExactlyInAnyOrderElementsOf(
                        LIBRARY.sources().citations().keySet());
    }

    @Test
    void aMeasureWithoutATagSaysCommonPractice() {
        Measure pause =
                LIBRARY.rubric(Procedures.TRAB_FORNIX).step("TF01").measures().get(0);

        assertThat(pause.sources()).containsExactly("common-practice");
        assertThat(LIBRARY.sources().citation("common-practice")).isEqualTo("Common practice, no source.");
        assertThat(LIBRARY.sources().citation("memory")).startsWith("From memory");
    }

    @Test
    void aKeyOfLongAgoIsShownAsItIs() {
        assertThat(LIBRARY.sources().knows("Gone97")).isFalse();
        assertThat(LIBRARY.sources().citation("Gone97")).isEqualTo("Gone97");
    }

    @Test
    void aRubricWithACodeUsedTwiceCannotBeMade() {
        Step step = LIBRARY.rubric(Procedures.NEEDLING).step("ND01");

        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Rubric("P", "1.0", "Title", Family.NEEDLING, List.of(step, step)))
                .withMessage("A step code is used twice in P 1.0");
    }

    @Test
    void levelsHaveNoNicknames() {
        assertThat(rubrics().stream().flatMap(rubric -> rubric.steps().stream()))
                .allSatisfy(step -> assertThat(step.levels())
                        .noneMatch(level -> level.matches("(Done-for|Steered|Cued|Steady|Assured)\\b.*")));
    }

    @Test
    void phasesFollowTheOperation() {
        assertThat(LIBRARY.rubric(Procedures.TRAB_FORNIX).phases())
                .extracting(PhaseSteps::phase)
                .containsExactly(Phase.values());
        assertThat(LIBRARY.rubric(Procedures.TRAB_FORNIX).phases().get(4).steps())
                .extracting(Step::code)
                .containsExactly("TF11", "TF12", "TF13", "TF18");
    }

    private static List<String> codes(Rubric rubric) {
        return rubric.steps().stream().map(Step::code).toList();
    }

    private static List<Measure> measures(Rubric rubric) {
        return rubric.steps().stream().flatMap(step -> step.measures().stream()).toList();
    }
}
