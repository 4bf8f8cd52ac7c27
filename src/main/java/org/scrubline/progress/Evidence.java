package org.scrubline.progress;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.casework.Part;
import org.scrubline.casework.Verdict;
import org.scrubline.signoff.SignedSheet;

/**
 * The signed sheets about one trainee and one procedure that count: those whose confirmed part is the whole case or
 * parts of it. Assisting is experience, no evidence of operating.
 *
 * @param cases oldest first
 * @param assisted cases with a signed sheet in which the trainee only assisted
 */
public record Evidence(List<CountedCase> cases, int assisted) {

    private static final Comparator<SignedSheet> BY_TIME = Comparator.comparing(SignedSheet::caseEndedAt)
            .thenComparing(SignedSheet::caseId)
            .thenComparing(SignedSheet::signedAt)
            .thenComparing(SignedSheet::id);

    public Evidence {
        cases = List.copyOf(cases);
    }

    /** Sorts the sheets of one trainee and one procedure into cases. */
    public static Evidence of(Collection<SignedSheet> signed) {
        Map<UUID, List<SignedSheet>> byCase = signed.stream()
                .filter(sheet -> sheet.confirmedPart() != Part.ASSISTED)
                .sorted(BY_TIME)
                .collect(Collectors.groupingBy(SignedSheet::caseId, LinkedHashMap::new, Collectors.toList()));
        List<CountedCase> cases = byCase.entrySet().stream()
                .map(entry ->
                        new CountedCase(entry.getKey(), entry.getValue().get(0).caseEndedAt(), entry.getValue()))
                .toList();
        long assisted = signed.stream()
                .map(SignedSheet::caseId)
                .filter(id -> !byCase.containsKey(id))
                .distinct()
                .count();
        return new Evidence(cases, (int) assisted);
    }

    /** The same without the sheets that await their countersignature: what counts toward a gate. */
    Evidence settled() {
        return awaiting() == 0
                ? this
                : of(sheets().stream()
                        .filter(sheet -> !sheet.marks().awaitingCountersignature())
                        .toList());
    }

    /** Counted sheets that await their countersignature. */
    public int awaiting() {
        return (int) sheets().stream()
                .filter(sheet -> sheet.marks().awaitingCountersignature())
                .count();
    }

    /** Every counted sheet, oldest case first. */
    public List<SignedSheet> sheets() {
        return cases.stream().flatMap(one -> one.sheets().stream()).toList();
    }

    /** How many counted sheets are contested and not decided. */
    public int contested() {
        return (int)
                sheets().stream().filter(sheet -> sheet.marks().contested()).count();
    }

    /** How many people signed. */
    public int scorers() {
        return bySigner().size();
    }

    /** The most sheets any one person signed; 0 without sheets. */
    public int mostByOneScorer() {
        return bySigner().values().stream().mapToInt(Long::intValue).max().orElse(0);
    }

    private Map<UUID, Long> bySigner() {
        return sheets().stream().collect(Collectors.groupingBy(SignedSheet::signerId, Collectors.counting()));
    }

    /** Number of sheets by verdict; a verdict nobody gave stands at 0. */
    public Map<Verdict, Integer> verdicts() {
        Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
        for (Verdict verdict : Verdict.values()) {
            counts.put(verdict, 0);
        }
        sheets().forEach(sheet -> counts.merge(sheet.verdict(), 1, Integer::sum));
        return counts;
    }

    public Optional<Instant> lastCaseAt() {
        return cases.isEmpty()
                ? Optional.empty()
                : Optional.of(cases.get(cases.size() - 1).endedAt());
    }

    /**
     * What every counted sheet says about each step, by code, oldest case first; sheets of a rubric without a step are
     * absent from its list.
     */
    public Map<String, List<StepScore>> steps() {
        Map<String, List<StepScore>> steps = new HashMap<>();
        sheets().forEach(sheet -> sheet.steps()
                .forEach(step -> steps.computeIfAbsent(step.stepCode(), code -> new ArrayList<>())
                        .add(new StepScore(sheet, step.state()))));
        return steps;
    }
}
