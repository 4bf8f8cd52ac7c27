package org.scrubline.cohort.signal;

import java.time.Duration;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.scrubline.casework.Part;
import org.scrubline.casework.StepState;
import org.scrubline.cohort.GroupTables;
import org.scrubline.demo.plan.CaseStatus;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.demo.plan.DemoRubrics;
import org.scrubline.demo.plan.PlannedCase;
import org.scrubline.demo.plan.PlannedSheet;
import org.scrubline.people.Characteristic;
import org.scrubline.people.SettingKey;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.curve.CaseBand;
import org.scrubline.scoring.curve.ProcedureStandard;

/** The invented programme as the rules would read it from its signed sheets: nothing of what was planted goes in. */
final class PlannedProgramme {

    private static final int MONTHS = 24;

    /** Whom the scenario gives cause for a signal that is concluded, and S09, about whom nothing is ever said. */
    private static final Map<Signal.Kind, Set<String>> PLANTED = Map.of(
            Signal.Kind.PLATEAU, Set.of("T02"),
            Signal.Kind.REGRESSION, Set.of(),
            Signal.Kind.STEPS_BEHIND, Set.of("T04", "T08", "T11", "T12"),
            Signal.Kind.FEW_CASES, Set.of("T03", "T14"),
            Signal.Kind.SCORES_LOWER, Set.of("S02", "S07", "S09"),
            Signal.Kind.SCORES_HIGHER, Set.of("S03", "S08", "S09"),
            Signal.Kind.NARROW_RANGE, Set.of("S05", "S09"));

    private PlannedProgramme() {}

    static ProgrammeRecord of(long seed) {
        DemoRubrics rubrics = new DemoRubrics(RubricLibrary.shipped());
        DemoPlan plan = DemoPlan.draw(seed, LocalDate.of(2024, 9, 1), 1, rubrics);
        List<PlannedCase> operated =
                plan.cases().stream().filter(one -> one.part() != Part.ASSISTED).toList();
        return new ProgrammeRecord(
                operated.stream()
                        .filter(PlannedCase::signed)
                        .flatMap(one -> one.sheets().stream().map(sheet -> form(one, sheet)))
                        .toList(),
                operated.stream()
                        .filter(one -> !one.signed() && one.status() != CaseStatus.VOIDED)
                        .flatMap(one -> one.sheets().stream().map(sheet -> unsigned(one)))
                        .toList(),
                DemoCast.TRAINEES.stream().collect(Collectors.toMap(DemoCast.Trainee::id, DemoCast.Trainee::earlier)),
                critical(rubrics),
                new ProgrammeRecord.Limits(
                        Duration.ofDays(56),
                        Duration.ofHours(72),
                        Duration.ofDays(14),
                        ProcedureStandard.Minimums.USUAL),
                plan.end());
    }

    private static Map<String, List<String>> critical(DemoRubrics rubrics) {
        Map<String, List<String>> critical = new LinkedHashMap<>();
        Procedures.ALL.forEach(procedure -> critical.put(
                procedure,
                rubrics.of(procedure, MONTHS).criticalSteps().stream()
                        .filter(step -> !step.onlyWhenConverted())
                        .map(Step::code)
                        .toList()));
        return critical;
    }

    private static SignedForm form(PlannedCase one, PlannedSheet sheet) {
        boolean first = sheet.scorer().equals(one.scorer());
        return new SignedForm(
                one.number() + "-" + sheet.scorer(),
                String.valueOf(one.number()),
                one.trainee(),
                sheet.scorer(),
                one.procedure(),
                one.endedAt(),
                sheet.signedAt(),
                CaseBand.valueOf(one.band().name()),
                levels(first ? one.reviewedSteps() : sheet.steps()),
                true);
    }

    private static Map<String, Integer> levels(Map<String, StepState> steps) {
        Map<String, Integer> levels = new LinkedHashMap<>();
        steps.forEach((code, state) -> {
            if (state instanceof StepState.Scored scored) {
                levels.put(code, scored.level());
            }
        });
        return levels;
    }

    private static ProgrammeRecord.Unsigned unsigned(PlannedCase one) {
        return new ProgrammeRecord.Unsigned(one.trainee(), String.valueOf(one.number()), one.endedAt());
    }

    /** Whether each line of the scenario's list is found. */
    static Map<String, Boolean> found(ProgrammeRecord programme, Findings all) {
        Map<String, Boolean> found = new LinkedHashMap<>();
        found.put("T02 plateau", has(all, "T02", Signal.Kind.PLATEAU));
        found.put("T05 supported", has(all, "T05", Signal.Kind.SUPPORTED));
        found.put("T07 break, back at its level, nothing else", brokeAndRecovered(all));
        found.put("T08 steps behind, TF09 among them", behind(all, "T08", "TF09"));
        found.put("T11 steps behind, TF03 or TF16 among them", behind(all, "T11", "TF03", "TF16"));
        found.put("T12 steps behind, TF18 or TF12 among them", behind(all, "T12", "TF18", "TF12"));
        found.put("T13 insufficient evidence", has(all, "T13", Signal.Kind.INSUFFICIENT));
        found.put("T14 insufficient evidence", has(all, "T14", Signal.Kind.INSUFFICIENT));
        found.put("T03 few cases", has(all, "T03", Signal.Kind.FEW_CASES));
        found.put("T03 insufficient evidence", has(all, "T03", Signal.Kind.INSUFFICIENT));
        found.put("S02 scores lower", scorer(all, "S02", Signal.Kind.SCORES_LOWER));
        found.put("S03 scores higher", scorer(all, "S03", Signal.Kind.SCORES_HIGHER));
        found.put("S04 one level for all", scorer(all, "S04", Signal.Kind.ONE_LEVEL));
        found.put("S05 narrow range", scorer(all, "S05", Signal.Kind.NARROW_RANGE));
        found.put("S06 signs late", scorer(all, "S06", Signal.Kind.SIGNS_LATE));
        found.put("S09 too few to judge", tooFew(all, "S09"));
        found.put("T10 not scored by S08", apart(programme, "T10", "S08"));
        found.put("every table on groups hidden", groupsHidden(programme));
        return found;
    }

    /** Whether anything at all is said that the plan gives no cause for. */
    static Map<String, Boolean> accused(Findings all) {
        Map<String, Boolean> accused = new LinkedHashMap<>();
        accused.put("T01", !accusing(all, "T01").isEmpty());
        accused.put("T06", !accusing(all, "T06").isEmpty());
        accused.put(
                "S01", all.scorers().stream().anyMatch(signal -> signal.about().equals("S01")));
        return accused;
    }

    /** How many signals that are concluded are about somebody without cause, by kind. */
    static Map<Signal.Kind, Integer> withoutCause(Findings all) {
        Map<Signal.Kind, Integer> counts = new EnumMap<>(Signal.Kind.class);
        PLANTED.forEach((kind, planted) ->
                counts.put(kind, (int) Stream.concat(all.trainees().stream(), all.scorers().stream())
                        .filter(signal -> signal.kind() == kind && !planted.contains(signal.about()))
                        .count()));
        return counts;
    }

    /** People without cause for a signal of the kind. */
    static int without(Signal.Kind kind) {
        Set<String> planted = PLANTED.getOrDefault(kind, Set.of());
        boolean ofScorers = planted.stream().anyMatch(who -> who.startsWith("S"));
        return (ofScorers ? DemoCast.SUPERVISORS.size() : DemoCast.TRAINEES.size()) - planted.size();
    }

    /** What is arithmetic (insufficient evidence, late or missing sheets) or good news accuses nobody. */
    static List<Signal.Kind> accusing(Findings all, String trainee) {
        return all.trainees().stream()
                .filter(signal -> signal.about().equals(trainee))
                .map(Signal::kind)
                .filter(kind -> kind != Signal.Kind.SUPPORTED
                        && kind != Signal.Kind.INSUFFICIENT
                        && kind != Signal.Kind.SCORED_LATE
                        && kind != Signal.Kind.UNSCORED)
                .toList();
    }

    private static boolean brokeAndRecovered(Findings all) {
        List<Signal> about = all.trainees().stream()
                .filter(signal -> signal.about().equals("T07"))
                .toList();
        return about.stream().anyMatch(signal -> signal.kind() == Signal.Kind.BREAK && CourseRules.recovered(signal))
                && about.stream()
                        .noneMatch(signal ->
                                signal.kind() == Signal.Kind.PLATEAU || signal.kind() == Signal.Kind.REGRESSION);
    }

    private static boolean has(Findings all, String trainee, Signal.Kind kind) {
        return all.trainees().stream().anyMatch(signal -> signal.about().equals(trainee) && signal.kind() == kind);
    }

    private static boolean behind(Findings all, String trainee, String... anyOf) {
        return all.trainees().stream()
                .filter(signal -> signal.about().equals(trainee) && signal.kind() == Signal.Kind.STEPS_BEHIND)
                .anyMatch(signal -> List.of(anyOf).stream().anyMatch(signal.steps()::contains));
    }

    private static boolean scorer(Findings all, String scorer, Signal.Kind kind) {
        return all.scorers().stream().anyMatch(signal -> signal.about().equals(scorer) && signal.kind() == kind);
    }

    private static boolean tooFew(Findings all, String scorer) {
        return all.figures().stream().anyMatch(one -> one.scorer().equals(scorer) && !one.enough())
                && all.scorers().stream().noneMatch(signal -> signal.about().equals(scorer));
    }

    private static boolean groupsHidden(ProgrammeRecord programme) {
        List<TraineeCounts> counts = TraineeCounts.of(programme);
        return !counts.isEmpty()
                && Stream.of(Characteristic.values()).allMatch(one -> {
                    Map<String, String> said = new HashMap<>();
                    DemoCast.TRAINEES.forEach(trainee -> Optional.ofNullable(
                                    DemoCast.said(trainee.id()).get(one))
                            .ifPresent(answer -> said.put(trainee.id(), answer)));
                    return GroupTables.of(counts, one.answers(), said, SettingKey.SMALLEST_GROUP.usual())
                            .hidden();
                });
    }

    private static boolean apart(ProgrammeRecord programme, String trainee, String scorer) {
        return programme.forms().stream()
                .noneMatch(
                        form -> form.trainee().equals(trainee) && form.scorer().equals(scorer));
    }
}
