package org.scrubline.scoring.curve;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the model needs to know about one operated case, whoever scores it.
 *
 * @param caseId identity of the case within its trainee; two scorers of one case share it
 * @param order position in time (any increasing number; {@link #of} uses epoch seconds of the case's end)
 * @param experience supervised cases of the procedure done before this one, declared earlier experience included; 0 to
 *     below 1e6
 * @param gapExcess months away beyond the free 60 days since the previous case; 0 to 120 are taken, {@link #of} gives
 *     at most 8
 * @param complexity covariates, larger = harder, usually 0 to 1, at most 100 in size; the same number for every case of
 *     one fit
 */
public record CaseContext(String caseId, long order, double experience, double gapExcess, List<Double> complexity) {

    /** Days without a case that cost nothing. */
    private static final double FREE_DAYS = 60;

    private static final double DAYS_A_MONTH = 30;
    private static final double LONGEST_EXCESS = 8;

    /**
     * Checks the ranges.
     *
     * @param caseId not checked
     * @param order not checked
     * @param experience 0 to below 1e6
     * @param gapExcess 0 to 120
     * @param complexity each -100 to 100; copied
     * @throws IllegalArgumentException when experience, gap or a covariate is out of its range or NaN
     */
    public CaseContext {
        if (!(experience >= 0 && experience < 1e6)) {
            throw new IllegalArgumentException(
                    "case " + caseId + ": experience must be 0 or more, but is " + experience);
        }
        if (!(gapExcess >= 0 && gapExcess <= 120)) {
            throw new IllegalArgumentException("case " + caseId + ": gap must be 0..120 months, but is " + gapExcess);
        }
        complexity = List.copyOf(complexity);
        for (double x : complexity) {
            if (!(Math.abs(x) <= 100)) {
                throw new IllegalArgumentException("case " + caseId + ": complexity " + x + " is not a usable number");
            }
        }
    }

    /**
     * A case of the product.
     *
     * @param caseId identity of the case within its trainee
     * @param ended end of the case
     * @param experience cases done before, 0 or more
     * @param band its complexity
     * @param previousEnded end of the case before it, null for the first; one that is later counts as no gap
     * @return the context, with three complexity covariates
     * @throws IllegalArgumentException when experience is negative
     */
    public static CaseContext of(
            String caseId, Instant ended, int experience, CaseBand band, @Nullable Instant previousEnded) {
        double excess = previousEnded == null ? 0 : gapExcess(Duration.between(previousEnded, ended));
        return new CaseContext(caseId, ended.getEpochSecond(), experience, excess, band.indicators());
    }

    /**
     * {@return the months beyond the free 60 days, of 30 days each, capped at 8: {@code min(max(days - 60, 0) / 30,
     * 8)}}
     *
     * @param away from one case to the next; a negative one gives 0
     */
    public static double gapExcess(Duration away) {
        double days = away.toSeconds() / 86_400.0;
        return Math.min(Math.max(days - FREE_DAYS, 0) / DAYS_A_MONTH, LONGEST_EXCESS);
    }
}
