package org.scrubline.scoring.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * Kaplan-Meier's curve of the time to a first event, here for example a first decision, when some people are still
 * waiting (censored).
 *
 * <p>S(t) = product over event times up to t of 1 - events / at risk; someone censored at an event time is still at
 * risk then. Standard error by Greenwood, S sqrt(sum(events / (at risk (at risk - events)))); at S = 0 it does not
 * exist. Without events the curve has no step: S = 1 throughout. After the last observed time nothing is said.
 *
 * <p>Kaplan and Meier, J Am Stat Assoc 1958;53:457, doi:10.1080/01621459.1958.10501452.
 *
 * @param steps one for each time with an event, in order
 */
public record SurvivalCurve(List<Step> steps) {

    /**
     * The curve from one event time on.
     *
     * @param time of the event or events, in the unit given
     * @param atRisk people still waiting just before, 1 or more
     * @param events at this time, 1 or more
     * @param survival share still without the event after it, 0 to below 1
     * @param standardError of the share; empty when the share is 0
     */
    public record Step(double time, int atRisk, int events, double survival, OptionalDouble standardError) {}

    /**
     * The curve.
     *
     * @param times to the event or the end of waiting, one for each person, at least one, 0 or more, any unit
     * @param events whether the time ended in the event (true) or is censored (false)
     * @return the curve
     * @throws IllegalArgumentException when lists are empty or differ in length, or a time is negative or no number
     */
    public static SurvivalCurve of(double[] times, boolean[] events) {
        requirePeople(times, events);
        double[] eventTimes = eventTimes(times, events);
        List<Step> steps = new ArrayList<>();
        double survival = 1;
        double greenwood = 0;
        for (double time : eventTimes) {
            int atRisk = (int) Arrays.stream(times).filter(t -> t >= time).count();
            int count = (int) IntStream.range(0, times.length)
                    .filter(i -> events[i] && times[i] == time)
                    .count();
            survival *= 1 - (double) count / atRisk;
            greenwood += count / ((double) atRisk * (atRisk - count));
            steps.add(new Step(
                    time,
                    atRisk,
                    count,
                    survival,
                    count == atRisk ? OptionalDouble.empty() : Ratio.finite(survival * Math.sqrt(greenwood))));
        }
        return new SurvivalCurve(List.copyOf(steps));
    }

    static void requirePeople(double[] times, boolean[] events) {
        Require.sameLength("The list of times", times.length, "the list of events", events.length);
        Require.finite("The list of times", times, 1);
        for (double time : times) {
            Require.that(time >= 0, "A time must not be negative, but one is %s.", time);
        }
    }

    static double[] eventTimes(double[] times, boolean[] events) {
        return IntStream.range(0, times.length)
                .filter(i -> events[i])
                .mapToDouble(i -> times[i])
                .distinct()
                .sorted()
                .toArray();
    }

    /**
     * {@return the first time at which at most half (slack 1e-12) are still without the event; empty when it is not
     * reached}
     */
    public OptionalDouble median() {
        return steps.stream()
                .filter(step -> step.survival() <= 0.5 + 1e-12)
                .mapToDouble(Step::time)
                .findFirst();
    }
}
