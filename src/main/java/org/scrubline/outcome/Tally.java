package org.scrubline.outcome;

import org.scrubline.scoring.estimate.Interval;
import org.scrubline.scoring.estimate.ProportionInterval;

/**
 * How many of how many.
 *
 * @param of those about which enough is known
 */
public record Tally(int has, int of) {

    private static final double CONFIDENCE = .95;

    static final Tally NONE = new Tally(0, 0);

    public Tally {
        if (has < 0 || has > of) {
            throw new IllegalArgumentException(has + " of " + of);
        }
    }

    Tally and(boolean found) {
        return new Tally(found ? has + 1 : has, of + 1);
    }

    /** The exact interval of the share at 95 %. */
    public Interval interval() {
        return ProportionInterval.clopperPearson(has, of, CONFIDENCE);
    }
}
