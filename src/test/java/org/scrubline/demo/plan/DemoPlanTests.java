package org.scrubline.demo.plan;

import static java.util.stream.Collectors.counting;
import static java.util.stream.Collectors.groupingBy;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.scrubline.casework.StepState;
import org.scrubline.platform.FreeText;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;

/** The tables and sentences of the invented scenario, counted in plans of several seeds. */
class DemoPlanTests {

    private static final LocalDate BEGIN = LocalDate.of(2024, 9, 1);
    private static final DemoRubrics RUBRICS = new DemoRubrics(RubricLibrary.shipped());
    private static final List<DemoPlan> PLANS = LongStream.of(DemoPlan.USUAL_SEED, 1, 2, 3)
            .mapToObj(seed -> DemoPlan.draw(seed, BEGIN, 1, RUBRICS))
            .toList();

    static Stream<DemoPlan> plans() {
        return PLANS.stream();
    }

    @Test
    void theSameSeedGivesTheSamePlan() {
        DemoPlan again = DemoPlan.draw(DemoPlan.USUAL_SEED, BEGIN, 1, RUBRICS);
        assertThat(again.toString()).isEqualTo(PLANS.get(0).toString());
        assertThat(PLANS.get(1).cases()).isNotEqualTo(PLANS.get(0).cases());
    }

    @ParameterizedTest
    @MethodSource("plans")
    void theCasesOfEachPlaceAddUpToTheTable(DemoPlan plan) {
        for (DemoCast.Place place : DemoCast.PLACES) {
            Map<String, Long> counts = count(plan, one -> one.site().equals(place.code()), PlannedCase::procedure);
            for (int i = 0; i < DemoCast.PROCEDURES.size(); i++) {
                assertThat(counts.getOrDefault(DemoCast.PROCEDURES.get(i), 0L))
                        .as("%s at %s", DemoCast.PROCEDURES.get(i), place.code())
                        .isEqualTo(place.cases().get(i).longValue());
            }
        }
        assertThat(count(plan, one -> true, PlannedCase::procedure))
                .containsExactlyInAnyOrderEntriesOf(Map.of(
                        Procedures.TRAB_FORNIX, 400L,
                        Procedures.TRAB_LIMBUS, 36L,
                        Procedures.DRAINAGE_DEVICE, 162L,
                        Procedures.DEEP_SCLERECTOMY, 46L,
                        Procedures.GEL_STENT, 78L,
                        Procedures.NEEDLING, 98L,
                        Procedures.POSTOP_CARE, 80L));
    }

    @ParameterizedTest
    @MethodSource("plans")
    void everyTraineeHasTheCasesOfTheTable(DemoPlan plan) {
        List<Integer> cases = List.of(58, 54, 36, 56, 102, 96, 66, 98, 88, 54, 52, 62, 44, 34);
        Map<String, Long> counts = count(plan, one -> true, PlannedCase::trainee);
        for (int i = 0; i < cases.size(); i++) {
            String trainee = DemoCast.TRAINEES.get(i).id();
            assertThat(counts.get(trainee)).as(trainee).isEqualTo(cases.get(i).longValue());
        }
    }

    @ParameterizedTest
    @MethodSource("plans")
    void everyStatusHasItsNumber(DemoPlan plan) {
        assertThat(count(plan, one -> true, PlannedCase::status))
                .containsExactlyInAnyOrderEntriesOf(Map.of(
                        CaseStatus.SIGNED, 828L,
                        CaseStatus.NEVER_SCORED, 36L,
                        CaseStatus.DRAFT, 18L,
                        CaseStatus.VOIDED, 10L,
                        CaseStatus.CLOSED, 8L));
        assertThat(plan.cases().stream().filter(one -> one.sheets().size() == 2))
                .hasSize(45);
        assertThat(plan.cases().stream()
                        .filter(one -> one.sheets().size() == 2)
                        .map(one ->
                                one.sheets().stream().map(PlannedSheet::scorer).toList()))
                .allMatch(scorers ->
                        scorers.contains("S01") && Set.copyOf(scorers).size() == 2);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void theBandsOfAPlaceHaveTheirShares(DemoPlan plan) {
        for (DemoCast.Place place : DemoCast.PLACES) {
            long all = plan.cases().stream()
                    .filter(one -> one.site().equals(place.code()))
                    .count();
            Map<Band, Long> counts = count(plan, one -> one.site().equals(place.code()), PlannedCase::band);
            for (int i = 0; i < place.bands().size(); i++) {
                Band band = Band.values()[i];
                assertThat(100. * counts.get(band) / all)
                        .isCloseTo(place.bands().get(i), org.assertj.core.data.Offset.offset(.5));
            }
        }
        var complexity = RubricLibrary.shipped().complexity();
        assertThat(plan.cases()).allMatch(one -> complexity.band(one.factors()) == one.band());
    }

    @ParameterizedTest
    @MethodSource("plans")
    void whatTheStoryNeedsIsThere(DemoPlan plan) {
        assertThat(plan.cases().stream().filter(with("T10"))).noneMatch(scoredBy("S08"));
        assertThat(plan.cases().stream().filter(scoredBy("S07")))
                .allMatch(one -> one.endedAt()
                        .isBefore(plan.month(21).atStartOfDay(DemoCast.ZONE).toInstant()));
        assertThat(plan.cases().stream().filter(scoredBy("S09"))).hasSize(8);
        assertThat(plan.cases().stream()
                        .filter(with("T13"))
                        .filter(one -> one.signed() && one.procedure().equals(Procedures.TRAB_FORNIX)))
                .hasSizeBetween(5, 9);
        assertThat(plan.cases().stream().filter(with("T13")).filter(PlannedCase::signed))
                .hasSize(18);
        assertThat(plan.cases().stream()
                        .filter(with("T14"))
                        .map(PlannedCase::scorer)
                        .distinct())
                .hasSizeLessThanOrEqualTo(3);
        assertThat(plan.cases().stream().filter(with("T07")).map(one -> month(plan, one)))
                .noneMatch(month -> month >= 10 && month <= 15);
        assertThat(plan.cases().stream()
                        .filter(with("T03"))
                        .filter(scoredBy("S03"))
                        .count())
                .isGreaterThan(36 * 2 / 5);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void unusualThingsHappenAsOftenAsTold(DemoPlan plan) {
        assertThat(contests(plan, PlannedContest.Outcome.UPHELD)).hasSize(3);
        assertThat(contests(plan, PlannedContest.Outcome.NOT_UPHELD)).hasSize(2);
        assertThat(contests(plan, PlannedContest.Outcome.OPEN)).hasSize(1);
        for (Map.Entry<Oddity, Integer> odd : Map.of(
                        Oddity.TWO_DEVICES, 3, Oddity.REFERENCE_TAKEN, 2, Oddity.ALL_BY_SUPERVISOR, 1)
                .entrySet()) {
            assertThat(plan.cases().stream().filter(one -> one.oddities().contains(odd.getKey())))
                    .hasSize(odd.getValue());
        }
        assertThat(events(plan, "SPONGE_RETAINED")).hasSize(2);
        assertThat(events(plan, "OTHER")).hasSize(2);
        assertThat(plan.cases().stream().filter(one -> local(one).getDayOfWeek() == DayOfWeek.SUNDAY))
                .as("small hours after a change of the clocks")
                .hasSize(4);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void lateScoresComeMostlyFromOneScorer(DemoPlan plan) {
        Map<String, Long> late = plan.cases().stream()
                .filter(PlannedCase::signed)
                .filter(one -> delay(one).compareTo(Duration.ofHours(72)) > 0)
                .collect(groupingBy(PlannedCase::scorer, counting()));
        long all = late.values().stream().mapToLong(Long::longValue).sum();
        assertThat(all).isBetween(95L, 145L);
        assertThat(late.get("S06")).isBetween(80L, 125L);
        assertThat(plan.cases().stream()
                        .filter(PlannedCase::signed)
                        .filter(one -> delay(one).compareTo(Statuses.OPEN) > 0)
                        .count())
                .as("released after fourteen days")
                .isBetween(10L, 34L);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void everythingHappensInOrderAndBeforeTheEnd(DemoPlan plan) {
        assertThat(plan.cases()).isSortedAccordingTo(java.util.Comparator.comparing(PlannedCase::endedAt));
        for (PlannedCase one : plan.cases()) {
            assertThat(plan.cases().get(one.number())).isSameAs(one);
            assertThat(one.endedAt()).isAfter(BEGIN.atStartOfDay(DemoCast.ZONE).toInstant());
            if (one.signed() || one.status() == CaseStatus.VOIDED) {
                one.sheets().forEach(sheet -> assertThat(sheet.signedAt()).isBetween(one.endedAt(), plan.end()));
            }
        }
        assertThat(plan.cases().stream().map(PlannedCase::reference).distinct()).hasSize(900);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void everySignedSheetSaysSomethingOfEveryStepOfItsVersion(DemoPlan plan) {
        for (PlannedCase one : plan.cases()) {
            Rubric rubric = RUBRICS.of(one.procedure(), month(plan, one));
            assertThat(one.rubricVersion()).isEqualTo(rubric.version());
            if (one.signed()) {
                one.sheets()
                        .forEach(sheet -> assertThat(sheet.steps().keySet())
                                .containsExactlyElementsOf(rubric.steps().stream()
                                        .map(step -> step.code())
                                        .toList()));
            }
        }
        assertThat(count(plan, one -> one.procedure().equals(Procedures.TRAB_FORNIX), PlannedCase::rubricVersion))
                .containsOnlyKeys("1.0", "1.1", "2.0");
    }

    @ParameterizedTest
    @MethodSource("plans")
    void eventsComeAsOftenAsToldAndMoreOftenWhereAStepIsWeak(DemoPlan plan) {
        assertThat(share(plan, events(plan, "TAKEOVER"))).isBetween(.02, .06);
        List<PlannedCase> fornix = plan.cases().stream()
                .filter(one -> one.procedure().equals(Procedures.TRAB_FORNIX) && one.signed())
                .toList();
        assertThat(fornix.stream().filter(has("TEAR_REPAIRED")).count() / (double) fornix.size())
                .isBetween(.015, .09);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void wordsNameNobodyAndCanBeKept(DemoPlan plan) {
        plan.cases().stream().flatMap(one -> one.sheets().stream()).forEach(sheet -> {
            assertThat(FreeText.narrative("strength", sheet.strength(), 1000)).isEmpty();
            assertThat(FreeText.narrative("nextStep", sheet.nextStep(), 1000)).isEmpty();
            sheet.events()
                    .forEach(event -> assertThat(FreeText.narrative("action", event.action(), 500))
                            .isEmpty());
            assertThat((sheet.strength() + sheet.nextStep()).toLowerCase(java.util.Locale.ROOT))
                    .doesNotContain("hawk", "dove", "competent", "halo", "patient's");
        });
    }

    @Test
    void aSmallerPlanKeepsItsProportions() {
        DemoPlan small = DemoPlan.draw(DemoPlan.USUAL_SEED, BEGIN, .1, RUBRICS);
        assertThat(small.cases()).hasSize(90);
        assertThat(small.cases().stream().filter(PlannedCase::signed).count()).isBetween(80L, 84L);
        assertThat(count(small, one -> true, PlannedCase::trainee)).hasSize(14);
    }

    @Test
    void aScaleOfNothingOrFarTooMuchIsRefused() {
        for (double scale : new double[] {0, -1, 11, Double.NaN}) {
            assertThatThrownBy(() -> DemoPlan.draw(1, BEGIN, scale, RUBRICS)).hasMessageContaining("scale");
        }
    }

    @Test
    void thePlanBecomesTheEnginesTable() {
        var table = PlanScores.table(PLANS.get(0), Procedures.TRAB_FORNIX);
        long sheets = PLANS.get(0).cases().stream()
                .filter(one -> one.signed() && one.procedure().equals(Procedures.TRAB_FORNIX))
                .filter(one -> one.part() == org.scrubline.casework.Part.WHOLE_CASE)
                .mapToLong(one -> one.sheets().size())
                .sum();
        assertThat(table.assessments()).isEqualTo((int) sheets);
        assertThat(table.trainees()).hasSize(14).contains("T05");
        assertThat(PlanScores.of(PLANS.get(0), Procedures.TRAB_FORNIX)
                        .get(0)
                        .context()
                        .experience())
                .isEqualTo(PlanScores.declared(PLANS.get(0).cases().get(0).trainee(), Procedures.TRAB_FORNIX));
    }

    private static <K> Map<K, Long> count(
            DemoPlan plan, Predicate<PlannedCase> which, java.util.function.Function<PlannedCase, K> by) {
        return plan.cases().stream().filter(which).collect(groupingBy(by, counting()));
    }

    private static Predicate<PlannedCase> with(String trainee) {
        return one -> one.trainee().equals(trainee);
    }

    private static Predicate<PlannedCase> scoredBy(String scorer) {
        return one -> one.scorer().equals(scorer);
    }

    private static Predicate<PlannedCase> has(String event) {
        return one -> one.sheets().get(0).events().stream()
                .anyMatch(found -> found.code().equals(event));
    }

    private static List<PlannedCase> events(DemoPlan plan, String code) {
        return plan.cases().stream().filter(has(code)).collect(Collectors.toList());
    }

    private static double share(DemoPlan plan, List<PlannedCase> some) {
        return some.size() / (double) plan.cases().size();
    }

    private static Stream<PlannedCase> contests(DemoPlan plan, PlannedContest.Outcome outcome) {
        return plan.cases().stream()
                .filter(one -> one.contest() != null && one.contest().outcome() == outcome);
    }

    private static Duration delay(PlannedCase one) {
        return Duration.between(one.endedAt(), one.sheets().get(0).signedAt());
    }

    private static ZonedDateTime local(PlannedCase one) {
        return one.endedAt().atZone(DemoCast.ZONE);
    }

    private static int month(DemoPlan plan, PlannedCase one) {
        int month = 1;
        while (month < DemoCast.MONTHS
                && !plan.month(month + 1).isAfter(local(one).toLocalDate())) {
            month++;
        }
        return month;
    }

    /** Steps left open stay so. */
    @ParameterizedTest
    @MethodSource("plans")
    void draftsAreBegunAndNotFinished(DemoPlan plan) {
        plan.cases().stream().filter(one -> one.status() == CaseStatus.DRAFT).forEach(one -> {
            int said = one.sheets().get(0).steps().size();
            assertThat(said).isPositive();
            assertThat(one.sheets().get(0).steps().values()).doesNotContain(new StepState.Blank());
            assertThat(said)
                    .isLessThan(RUBRICS.of(one.procedure(), month(plan, one))
                            .steps()
                            .size());
        });
    }
}
