package org.scrubline.scoring.curve;

/**
 * How many further cases until the standard's chance is first reached, without leave: the draws of the next case's law
 * run forward with growth and wandering. 0 = the next case already reaches it. Wide and, at the short end, a little
 * optimistic by nature: show it as a range and never as a promise.
 *
 * @param shown false when the evidence is too thin to show it; the numbers are there all the same
 * @param low 10 % of draws need no more than this
 * @param median half of draws need no more
 * @param high 90 % of draws need no more; {@link #BEYOND} means "not within {@value #HORIZON}"
 * @param within10 probability within 10 cases, at most .8
 * @param within20 probability within 20 cases, at most .8
 * @param within60 probability within 60 cases, at most .8
 */
public record Forecast(
        boolean shown, int low, int median, int high, double within10, double within20, double within60) {

    /** Cases looked ahead. */
    public static final int HORIZON = 100;

    /** Stands for "not within the horizon". */
    public static final int BEYOND = HORIZON + 1;

    /** Highest probability that is displayed: said .86 to .90 came true in .75 to .77 of simulations. */
    static final double MOST = 0.8;
}
