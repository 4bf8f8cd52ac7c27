package org.scrubline.scoring.control;

/**
 * One case on a chart.
 *
 * @param caseNumber the case, counted from 1 over both stages
 * @param value height of the chart after the case, 0 or more; at a signal the height that reached the limit
 * @param signal whether this case signals
 * @param stage which of the two charts of a trainee was running
 */
public record ChartPoint(int caseNumber, double value, boolean signal, Stage stage) {

    /** The chart in force at a case. */
    public enum Stage {
        /** Evidence of an acceptable rate is still being gathered. */
        GATHERING,
        /** An acceptable rate has been signalled; the chart now looks for a worse one. */
        WATCHING
    }
}
