package org.scrubline.cohort.signal;

import java.time.Duration;
import java.util.List;

/**
 * How one supervisor scores, beside the colleagues.
 *
 * @param sheets signed sheets that count
 * @param trainees trainees they are about
 * @param offset how much higher (+) or lower (−) the same work is scored than by the mean colleague, in levels
 * @param offsetError its standard error, in levels
 * @param byLevel scores at each level, index 0 is level 1
 * @param oneLevel sheets with the same level on every step
 * @param canDiffer sheets with eight scored steps or more, the denominator of {@code oneLevel}
 * @param late sheets signed later than the programme's limit
 * @param medianHours half of the sheets were signed within this many hours
 */
public record ScorerFigures(
        String scorer,
        int sheets,
        int trainees,
        double offset,
        double offsetError,
        List<Integer> byLevel,
        int oneLevel,
        int canDiffer,
        int late,
        long medianHours) {

    /** Fewer sheets say nothing about a way of scoring. */
    public static final int SHEETS = 10;

    /** Fewer trainees cannot be told apart from a way of scoring. */
    public static final int TRAINEES = 4;

    public ScorerFigures {
        byLevel = List.copyOf(byLevel);
    }

    static ScorerFigures of(ProgrammeRecord programme, AdjustedLevels levels, String scorer) {
        List<SignedForm> own = programme.by(scorer);
        List<Duration> delays = own.stream().map(SignedForm::delay).sorted().toList();
        List<SignedForm> canDiffer = own.stream().filter(SignedForm::canDiffer).toList();
        return new ScorerFigures(
                scorer,
                own.size(),
                (int) own.stream().map(SignedForm::trainee).distinct().count(),
                levels.offset(scorer),
                levels.spread() / Math.sqrt(Math.max(1, own.size())),
                byLevel(own),
                (int) canDiffer.stream().filter(SignedForm::oneLevel).count(),
                canDiffer.size(),
                (int) delays.stream()
                        .filter(delay -> delay.compareTo(programme.limits().late()) > 0)
                        .count(),
                delays.isEmpty() ? 0 : delays.get(delays.size() / 2).toHours());
    }

    private static List<Integer> byLevel(List<SignedForm> own) {
        Integer[] counts = {0, 0, 0, 0, 0};
        own.forEach(form -> form.levels().values().forEach(level -> counts[level - 1]++));
        return List.of(counts);
    }

    /** Whether anything but the numbers of sheets and trainees may be shown. */
    public boolean enough() {
        return sheets >= SHEETS && trainees >= TRAINEES;
    }

    public int scores() {
        return byLevel.stream().mapToInt(Integer::intValue).sum();
    }

    /** Share of the scores on the two neighbouring levels used most, 0 to 1; 0 without scores. */
    public double twoLevels() {
        int most = 0;
        for (int i = 1; i < byLevel.size(); i++) {
            most = Math.max(most, byLevel.get(i - 1) + byLevel.get(i));
        }
        return scores() == 0 ? 0 : (double) most / scores();
    }

    /** Share of the sheets with one level for all steps, 0 to 1. */
    public double oneLevelShare() {
        return canDiffer == 0 ? 0 : (double) oneLevel / canDiffer;
    }

    public double lateShare() {
        return sheets == 0 ? 0 : (double) late / sheets;
    }
}
