package org.scrubline.outcome;

/**
 * A pressure of an eye with the drops taken then.
 *
 * @param iop mmHg, 0 to 80 in steps of a half
 * @param drops how many kinds of pressure-lowering drops, 0 to 6
 */
public record Pressure(double iop, int drops) {

    public static final int HIGHEST = 80;
    public static final int MOST_DROPS = 6;

    public Pressure {
        if (!takes(iop) || drops < 0 || drops > MOST_DROPS) {
            throw new IllegalArgumentException("no pressure: " + iop + " mmHg with " + drops + " drops");
        }
    }

    /** Whether a number can be a pressure. */
    public static boolean takes(double iop) {
        return iop >= 0 && iop <= HIGHEST && iop * 2 == Math.rint(iop * 2);
    }

    /** Whether this pressure is at least so many percent below another. */
    boolean fell(int percent, Pressure before) {
        // In half mmHg, so that nothing is lost by rounding.
        return Math.round(iop * 2) * 100 <= Math.round(before.iop * 2) * (100 - percent);
    }
}
