package org.scrubline.outcome;

import org.scrubline.outcome.SuccessSet.Ground;
import org.scrubline.outcome.SuccessSet.Judgement;
import org.scrubline.outcome.SuccessSet.Result;

/**
 * Cases by what one definition says of them.
 *
 * @param cases all of them
 * @param withoutDrops inside without drops
 * @param inside inside with or without drops
 * @param outside outside
 * @param lowAlone of those outside, the ones for nothing but a low pressure
 */
public record SuccessCount(int cases, int withoutDrops, int inside, int outside, int lowAlone) {

    static final SuccessCount NONE = new SuccessCount(0, 0, 0, 0, 0);

    SuccessCount and(Judgement one) {
        return new SuccessCount(
                cases + 1,
                withoutDrops + (one.result() == Result.WITHOUT_DROPS ? 1 : 0),
                inside + (one.inside() ? 1 : 0),
                outside + (one.result() == Result.OUTSIDE ? 1 : 0),
                lowAlone
                        + (one.ground()
                                        .filter(Ground.LOW_PRESSURE_ALONE::equals)
                                        .isPresent()
                                ? 1
                                : 0));
    }

    SuccessCount plus(SuccessCount other) {
        return new SuccessCount(
                cases + other.cases,
                withoutDrops + other.withoutDrops,
                inside + other.inside,
                outside + other.outside,
                lowAlone + other.lowAlone);
    }

    /** Cases about which enough is known. */
    public int known() {
        return inside + outside;
    }

    public Tally complete() {
        return new Tally(withoutDrops, known());
    }

    /** With or without drops. */
    public Tally qualified() {
        return new Tally(inside, known());
    }
}
