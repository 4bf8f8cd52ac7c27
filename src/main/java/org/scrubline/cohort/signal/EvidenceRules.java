package org.scrubline.cohort.signal;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.scrubline.scoring.curve.ProcedureStandard;

/** How much there is to see: exposure, lateness, the unscored, insufficient evidence. Limits are this project's own. */
final class EvidenceRules {

    /** Cases a month below this share of the programme's median are few. */
    static final double FEW = 0.8;

    /** A trainee shorter in the programme than this is not compared. */
    private static final int MONTHS = 3;

    /** Sheets before a share of them says anything. */
    private static final int SHEETS = 10;

    /** Share of late sheets worth a look. */
    static final double LATE = 0.5;

    /** Share of sheets never signed worth a look. */
    static final double NEVER = 0.25;

    private static final double DAYS_A_MONTH = 365.25 / 12;

    private EvidenceRules() {}

    /** Cases a month while present: breaks longer than a gap are left out. Zero for a presence of less than a quarter. */
    static double monthly(List<Instant> ended, Duration gap) {
        double days = 0;
        for (int i = 1; i < ended.size(); i++) {
            Duration between = Duration.between(ended.get(i - 1), ended.get(i));
            days += between.compareTo(gap) > 0 ? 0 : between.toHours() / 24.0;
        }
        double months = days / DAYS_A_MONTH;
        return months < MONTHS ? 0 : ended.size() / months;
    }

    /** Cases a month of everyone who can be compared. */
    static double median(ProgrammeRecord programme) {
        List<Double> all = programme.trainees().stream()
                .map(trainee ->
                        monthly(programme.ended(trainee), programme.limits().gap()))
                .filter(rate -> rate > 0)
                .sorted()
                .toList();
        int half = all.size() / 2;
        if (all.isEmpty()) {
            return 0;
        }
        return all.size() % 2 == 1 ? all.get(half) : (all.get(half - 1) + all.get(half)) / 2;
    }

    static Optional<Signal> fewCases(TraineeFacts facts, double median, Duration gap) {
        double rate = monthly(facts.ended(), gap);
        return rate > 0 && rate < FEW * median
                ? Optional.of(Signal.of(
                        Signal.Kind.FEW_CASES,
                        facts.trainee(),
                        List.of(rate, median, (double) facts.ended().size()),
                        facts.forms()))
                : Optional.empty();
    }

    static Optional<Signal> scoredLate(TraineeFacts facts, Duration limit) {
        List<SignedForm> late = facts.forms().stream()
                .filter(form -> form.delay().compareTo(limit) > 0)
                .toList();
        int all = facts.forms().size();
        return all >= SHEETS && late.size() > LATE * all
                ? Optional.of(Signal.of(
                        Signal.Kind.SCORED_LATE, facts.trainee(), List.of((double) late.size(), (double) all), late))
                : Optional.empty();
    }

    static Optional<Signal> unscored(TraineeFacts facts) {
        int all = facts.forms().size() + facts.never();
        return all >= SHEETS && facts.never() > NEVER * all
                ? Optional.of(Signal.of(
                        Signal.Kind.UNSCORED,
                        facts.trainee(),
                        List.of((double) facts.never(), (double) all),
                        List.of()))
                : Optional.empty();
    }

    /** Figures: cases, scorers and largest share of one scorer in the procedure with the most cases. */
    static Optional<Signal> insufficient(TraineeFacts facts, ProcedureStandard.Minimums minimums) {
        Map<String, List<SignedForm>> settled = facts.forms().stream()
                .filter(SignedForm::settled)
                .collect(Collectors.groupingBy(SignedForm::procedure, TreeMap::new, Collectors.toList()));
        if (settled.values().stream().map(Count::of).anyMatch(count -> count.supports(minimums))) {
            return Optional.empty();
        }
        Map.Entry<String, List<SignedForm>> most = settled.entrySet().stream()
                .max(Map.Entry.comparingByValue(Comparator.comparingInt(List::size)))
                .orElse(Map.entry("", List.of()));
        Count count = Count.of(most.getValue());
        return Optional.of(new Signal(
                Signal.Kind.INSUFFICIENT,
                facts.trainee(),
                most.getKey(),
                List.of(),
                List.of((double) count.cases, (double) count.scorers, count.largest),
                Signal.ids(most.getValue())));
    }

    private record Count(long cases, int scorers, double largest) {

        static Count of(List<SignedForm> forms) {
            Map<String, Long> byScorer =
                    forms.stream().collect(Collectors.groupingBy(SignedForm::scorer, Collectors.counting()));
            long most =
                    byScorer.values().stream().mapToLong(Long::longValue).max().orElse(0);
            return new Count(
                    forms.stream().map(SignedForm::caseId).distinct().count(),
                    byScorer.size(),
                    forms.isEmpty() ? 0 : (double) most / forms.size());
        }

        boolean supports(ProcedureStandard.Minimums minimums) {
            return cases >= minimums.supportCases()
                    && scorers >= minimums.supportScorers()
                    && largest <= minimums.largestShare();
        }
    }
}
